import type { Page } from 'playwright-core';
import type { Entry } from '../../src/core/job/entry';
import { encodeWav } from '../../src/voice/flite/wav';
import { spoken, type TestSpeaker } from './speaker';

/** How much of a piece of a brief answer sounds. */
const BRIEF = 0.1;

/** The app in a page, worked as a person would: tapped, spoken to, looked at and listened to. */
export class Bay {
  readonly requests: string[] = [];
  readonly troubles: string[] = [];

  constructor(readonly page: Page) {
    page.on('request', (r) => this.requests.push(r.url()));
    page.on('pageerror', (e) => this.troubles.push(e.message));
    page.on('console', (m) => {
      if (m.type() === 'error') this.troubles.push(m.text());
    });
  }

  /**
   * Puts a microphone of our own in front of the app, so that clips can be played when it is ready for them, and keeps
   * its answers brief unless the test is about hearing them whole.
   */
  async wireMicrophone(answers: 'brief' | 'whole' = 'brief'): Promise<void> {
    if (answers === 'brief') await this.answerBriefly();
    await this.page.addInitScript(() => {
      const context = new AudioContext();
      Object.assign(window, { microphone: context });
      const out = context.createMediaStreamDestination();
      const noise = context.createBuffer(1, context.sampleRate * 2, context.sampleRate);
      const samples = noise.getChannelData(0);
      let seed = 7;
      for (let i = 0; i < samples.length; i++) {
        seed = (seed * 48_271) % 2_147_483_647;
        samples[i] = 0.001 * (seed / 1_073_741_823.5 - 1);
      }
      const room = new AudioBufferSourceNode(context, { buffer: noise, loop: true });
      room.connect(out);
      room.start();
      const real = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
      navigator.mediaDevices.getUserMedia = async (asked) => {
        if (asked?.video) return real(asked);
        await context.resume();
        return out.stream.clone();
      };
      (window as unknown as { playClip: (wav: string) => Promise<void> }).playClip = async (wav) => {
        const bytes = Uint8Array.from(atob(wav), (c) => c.charCodeAt(0));
        const buffer = await context.decodeAudioData(bytes.buffer);
        const clip = new AudioBufferSourceNode(context, { buffer });
        clip.connect(out);
        const ended = new Promise((resolve) => clip.addEventListener('ended', resolve));
        clip.start();
        await ended;
      };
    });
  }

  /**
   * Answers are made, decoded, played and waited for as ever, but of each piece only the beginning sounds: otherwise a
   * session is mostly waiting until it has said what it has to say.
   */
  async answerBriefly(): Promise<void> {
    await this.page.addInitScript((share) => {
      const decode = BaseAudioContext.prototype.decodeAudioData;
      BaseAudioContext.prototype.decodeAudioData = async function (this: BaseAudioContext, bytes: ArrayBuffer) {
        const whole = await decode.call(this, bytes);
        if ((window as unknown as { microphone?: AudioContext }).microphone === this) return whole;
        const { numberOfChannels, sampleRate } = whole;
        const part = new AudioBuffer({ length: Math.ceil(whole.length * share), numberOfChannels, sampleRate });
        for (let n = 0; n < numberOfChannels; n++)
          part.copyToChannel(whole.getChannelData(n).subarray(0, part.length), n);
        return part;
      };
    }, BRIEF);
  }

  async open(address: string): Promise<void> {
    await this.page.goto(address);
    await this.page.click('.start-tap');
  }

  /** Takes a job over from its file, and waits until it stands among the jobs. */
  async takeOver(text: string): Promise<void> {
    await this.go('Jobs');
    const file = { name: 'job.json', mimeType: 'application/json', buffer: Buffer.from(text) };
    await this.page.locator('.picker-input').setInputFiles(file);
    await this.page.locator('.row').first().waitFor();
  }

  /** Has it talk as fast as Setup allows, for those who have heard it often: then Jobs, where a job can be begun. */
  async talkFast(): Promise<void> {
    await this.go('Setup');
    await this.page.getByLabel(/^Speed/).fill('1.3');
    await this.go('Jobs');
  }

  /** Begins a job on the procedure with this title. */
  async begin(title: string): Promise<void> {
    await this.page.getByText(title, { exact: false }).first().click();
    await this.page.getByLabel('Who is working').fill('Ansel');
    await this.page.getByRole('button', { name: 'Begin', exact: true }).click();
    await this.page.waitForSelector('.bench');
  }

  /** Waits until the app listens for the words of the place it is at, and our own voice is quiet. */
  async armed(): Promise<string> {
    await this.page.waitForSelector('#app[data-ear="listening"][data-voice="quiet"]', { timeout: 60_000 });
    return (await this.page.getAttribute('#app', 'data-armed')) ?? '';
  }

  /** Speaks into the microphone, to whatever listens; 1.3 is somebody smaller by so much, and quicker. */
  async utter(text: string, speaker: TestSpeaker = 'rms', smaller = 1): Promise<void> {
    const { samples, rateHz } = await spoken(text, speaker);
    const clip = Buffer.from(encodeWav({ samples, rateHz: Math.round(rateHz * smaller) })).toString('base64');
    await this.page.evaluate(
      (wav) => (window as unknown as { playClip: (w: string) => Promise<void> }).playClip(wav),
      clip,
    );
  }

  /** Waits until somebody may speak: after a breath, for what the app is about to say has begun by then. */
  async listens(): Promise<void> {
    await this.armed();
    await this.page.waitForTimeout(300);
    await this.armed();
  }

  /** Says something to the app by voice, and waits until it has answered and listens again. */
  async say(text: string, speaker: TestSpeaker = 'rms'): Promise<void> {
    await this.listens();
    const before = await this.entries();
    await this.utter(text, speaker);
    await this.page
      .waitForFunction((n) => Number(document.getElementById('app')?.dataset.entries) > n, before, { timeout: 6_000 })
      .catch(() => undefined);
    await this.armed();
  }

  /** Records everything on the reply bus by standing in for the speaker: every context's output is measured. */
  async tapReplies(): Promise<void> {
    await this.page.addInitScript(() => {
      const heard = { seconds: 0, peak: 0 };
      (window as unknown as { repliesHeard: typeof heard }).repliesHeard = heard;
      const connect = AudioNode.prototype.connect;
      const tapped = new WeakSet<BaseAudioContext>();
      AudioNode.prototype.connect = function (this: AudioNode, ...args: Parameters<typeof connect>) {
        const [target] = args as unknown as [AudioNode | AudioParam];
        if (target instanceof AudioDestinationNode && !tapped.has(this.context)) {
          tapped.add(this.context);
          const analyser = this.context.createAnalyser();
          analyser.fftSize = 2048;
          (connect as (this: AudioNode, to: AudioNode) => AudioNode).call(this, analyser);
          const samples = new Float32Array(analyser.fftSize);
          setInterval(() => {
            analyser.getFloatTimeDomainData(samples);
            const peak = samples.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
            heard.peak = Math.max(heard.peak, peak);
            if (peak > 0.01) heard.seconds += 0.05;
          }, 50);
        }
        return connect.apply(this, args);
      } as typeof connect;
    });
  }

  repliesHeard(): Promise<{ readonly seconds: number; readonly peak: number }> {
    return this.page.evaluate(
      () => (window as unknown as { repliesHeard: { seconds: number; peak: number } }).repliesHeard,
    );
  }

  /** The log of the open job as the app holds it, stored or about to be. */
  log(): Promise<readonly Entry[]> {
    return this.page.evaluate(
      () => (document.getElementById('app') as unknown as { entries: readonly Entry[] }).entries,
    );
  }

  /** Types words where the Bench offers it: the same road as a spoken command, without the sound. */
  async type(words: string): Promise<void> {
    const before = await this.entries();
    await this.page.getByPlaceholder('Or type it').fill(words);
    await this.page.getByRole('button', { name: 'Send' }).click();
    await this.page.waitForFunction((n) => Number(document.getElementById('app')?.dataset.entries) > n, before);
  }

  /** Opens another screen by its name in the list of screens. */
  async go(screen: string): Promise<void> {
    const direct = this.page.getByRole('button', { name: screen, exact: true });
    if (!(await direct.isVisible().catch(() => false)))
      await this.page.getByRole('button', { name: 'Screens' }).click();
    await direct.click();
  }

  async entries(): Promise<number> {
    return Number((await this.page.getAttribute('#app', 'data-entries')) ?? 0);
  }

  async place(): Promise<string> {
    return (await this.page.getAttribute('#app', 'data-place')) ?? '';
  }
}
