import { encodeWav } from '../../src/voice/flite/wav';
import { Bay } from '../browser/bay';
import { openContext } from '../browser/chromium';
import type { Site } from '../browser/site';
import { spoken } from '../browser/speaker';
import type { Edges } from './edges';
import { pageScript } from './page-script';

/** Speech is what is less than this far under the utterance's loudest five milliseconds, in decibels. */
const SPEECH_DB = -40;
/** Longer than any answer takes that is still an answer. */
const PATIENCE_MS = 8000;

type Watch = {
  readonly ready: { readonly at: number; readonly ms: number } | null;
  readonly loadAsked: number;
  readonly begin: () => void;
  readonly end: (speechDb: number) => Promise<Edges>;
};
type Watched = { readonly latencyWatch: Watch; readonly playClip: (wav: string) => Promise<void> };

/** Everything one start of the app showed; `readyMs` runs from the worker's order to load until it can listen. */
export type Listened = {
  readonly readyMs: number;
  readonly turns: readonly { readonly text: string; readonly edges: Edges }[];
};

/** A fresh browser, a fresh job, and these words said to it one after the other. Nothing of the app knows it is watched. */
export async function listen(site: Site, texts: readonly string[]): Promise<Listened> {
  const context = await openContext({ serviceWorkers: 'block' });
  try {
    await context.addInitScript({ path: pageScript('watch-page.js') });
    const bay = new Bay(await context.newPage());
    await bay.wireMicrophone('whole');
    await bay.open(site.address);
    await bay.talkFast();
    await bay.begin('Left head gasket');
    await bay.armed();
    const turns: { text: string; edges: Edges }[] = [];
    for (const text of texts) turns.push({ text, edges: await said(bay, text) });
    const readyMs = await bay.page.evaluate(() => {
      const { ready, loadAsked } = (window as unknown as Watched).latencyWatch;
      return (ready?.at ?? Number.NaN) - loadAsked;
    });
    return { readyMs, turns };
  } finally {
    await context.close();
  }
}

async function said(bay: Bay, text: string): Promise<Edges> {
  await bay.armed();
  // The ear is deaf for a moment after our own voice, and wants a moment's quiet.
  await bay.page.waitForTimeout(900);
  const clip = Buffer.from(encodeWav(await spoken(text))).toString('base64');
  await bay.page.evaluate(() => (window as unknown as Watched).latencyWatch.begin());
  await bay.page.evaluate((wav) => (window as unknown as Watched).playClip(wav), clip);
  await bay.page
    .waitForFunction(() => document.getElementById('app')?.dataset.voice === 'talking', null, { timeout: PATIENCE_MS })
    .catch(() => undefined);
  await bay.armed();
  return bay.page.evaluate((db) => (window as unknown as Watched).latencyWatch.end(db), SPEECH_DB);
}
