import { readFileSync } from 'node:fs';
import type { BrowserContext, Page } from 'playwright-core';
import type { LiveGrammar } from '../../src/core/language/grammar';
import type { RecogniserEvent } from '../../src/core/ports';
import { encodeWav } from '../../src/voice/flite/wav';
import { Bay } from '../browser/bay';
import { openContext } from '../browser/chromium';
import type { Bench } from './bench';
import type { VoskBench } from './bench-page';
import { toneSpeech } from './tone-sound';

declare const window: {
  readonly voskBench: VoskBench;
  readonly playClip: (wav: string) => Promise<void>;
  listener: ReturnType<VoskBench['listenTo']>;
};

type Verdict = Extract<RecogniserEvent, { type: 'heard' | 'rejected' }>;

const isVerdict = (event: RecogniserEvent): event is Verdict => event.type === 'heard' || event.type === 'rejected';
const CLIP_HZ = 16_000;

/** A page with the recogniser of the user's model in it, spoken to in tones. */
export class VoskBay {
  readonly #context: BrowserContext;
  readonly #bay: Bay;

  private constructor(
    context: BrowserContext,
    readonly page: Page,
    bay: Bay,
  ) {
    this.#context = context;
    this.#bay = bay;
  }

  static async open(bench: Bench): Promise<VoskBay> {
    const context = await openContext();
    const page = await context.newPage();
    const bay = new Bay(page);
    await bay.wireMicrophone();
    await page.goto(bench.address);
    // Sound wants a tap first.
    await page.mouse.click(5, 5);
    return new VoskBay(context, page, bay);
  }

  close(): Promise<void> {
    return this.#context.close();
  }

  /** Of all pages together, after what is no longer used has been given back. Linux tells it in its process files. */
  async residentMegabytes(): Promise<number> {
    await this.page.requestGC();
    const session = await this.#context.browser()?.newBrowserCDPSession();
    const { processInfo = [] } = (await session?.send('SystemInfo.getProcessInfo')) ?? {};
    await session?.detach();
    const pages = processInfo.filter(({ type }) => type === 'renderer');
    return pages.reduce((sum, { id }) => {
      const kilobytes = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${id}/status`, 'utf8'))?.[1];
      return sum + Number(kilobytes ?? 0) / 1024;
    }, 0);
  }

  get requests(): readonly string[] {
    return this.#bay.requests;
  }

  get troubles(): readonly string[] {
    return this.#bay.troubles;
  }

  /** Keeps an archive as if it had been chosen from a file. */
  keep(bytes: Buffer, name = 'my-model.tar.gz') {
    return this.page.evaluate(
      ([text, file]) =>
        window.voskBench.shelf.keep(new Blob([Uint8Array.from(atob(text), (c) => c.charCodeAt(0))]), file),
      [bytes.toString('base64'), name] as const,
    );
  }

  async listen(live: LiveGrammar): Promise<void> {
    await this.page.evaluate((grammar) => {
      window.listener = window.voskBench.listenTo(grammar);
    }, live);
  }

  /** Listens, and waits until it does and its opening half second is over. */
  async listening(live: LiveGrammar): Promise<void> {
    await this.listen(live);
    await this.until('ready');
    await this.page.waitForTimeout(800);
  }

  async arm(live: LiveGrammar): Promise<void> {
    const before = await this.count('armed');
    await this.page.evaluate((grammar) => window.listener.recogniser.arm(grammar), live);
    await this.until('armed', before + 1);
  }

  events(): Promise<readonly RecogniserEvent[]> {
    return this.page.evaluate(() => window.listener.events);
  }

  news() {
    return this.page.evaluate(() => window.listener.news);
  }

  async verdicts(): Promise<readonly Verdict[]> {
    return (await this.events()).filter(isVerdict);
  }

  async count(type: RecogniserEvent['type']): Promise<number> {
    return (await this.events()).filter((event) => event.type === type).length;
  }

  async until(type: RecogniserEvent['type'], least = 1, timeout = 20_000): Promise<void> {
    await this.page.waitForFunction(
      ([wanted, count]) => window.listener.events.filter((event) => event.type === wanted).length >= count,
      [type, least] as const,
      { timeout },
    );
  }

  async play(text: string): Promise<void> {
    const wav = Buffer.from(encodeWav(toneSpeech(text, CLIP_HZ))).toString('base64');
    await this.page.evaluate((clip) => window.playClip(clip), wav);
  }

  /** Says some words, and returns the one verdict on them. */
  async say(text: string): Promise<Verdict | undefined> {
    const before = (await this.verdicts()).length;
    await this.play(text);
    for (let wait = 0; wait < 40 && (await this.verdicts()).length === before; wait += 1) {
      await this.page.waitForTimeout(100);
    }
    return (await this.verdicts())[before];
  }
}
