import { encodeWav } from '../../src/voice/flite/wav';
import type { Bay } from '../browser/bay';
import { spoken } from '../browser/speaker';
import type { EarWork, Watched } from './watched';

/** Talk that is meant for nobody, over and over. */
const TALK = [
  'they said on the radio that it would rain from tomorrow afternoon until the end of the week',
  'my neighbour had the same trouble with his old van and it took him a whole month to find it',
  'you can leave the keys with the people in the office if nobody is here by then',
];

/** The microphone says that it takes echo away, so that the ear works on under our own voice instead of being deaf. */
export async function cancelEcho({ page }: Bay): Promise<void> {
  await page.addInitScript(() => {
    const settings = MediaStreamTrack.prototype.getSettings;
    MediaStreamTrack.prototype.getSettings = function () {
      return { ...settings.call(this), echoCancellation: true };
    };
  });
}

/** Starts the talk, which goes round until the page is closed. */
export async function talkOn({ page }: Bay): Promise<void> {
  const clips: string[] = [];
  for (const text of TALK) clips.push(Buffer.from(encodeWav(await spoken(text, 'awb'))).toString('base64'));
  await page.evaluate((wavs) => {
    const { playClip } = window as unknown as { playClip: (wav: string) => Promise<void> };
    void (async () => {
      for (;;) {
        for (const wav of wavs) {
          await playClip(wav);
          // Breath: where the recogniser comes to an end with what it heard.
          await new Promise((done) => setTimeout(done, 500));
        }
      }
    })();
  }, clips);
}

/** Only denoising it works for some three hundredths of the time, decoding speech for a third. */
const DECODING = 0.15;
const STRETCH_MS = 400;
/** Answers are waited for, and what somebody says on into one is ignored for two seconds more. */
const PATIENCE_MS = 12_000;

export const earWork = async ({ page }: Bay): Promise<EarWork> => {
  const { work, utterances } = await page.evaluate(() => {
    const { work, utterances } = (window as unknown as Watched).screensWatch.ear;
    return { work, utterances };
  });
  return { work, utterances };
};

/** Waits until the recogniser is in the middle of somebody's sentence; after a while it is worked on all the same. */
export async function decoding({ page }: Bay): Promise<void> {
  await page
    .waitForFunction(
      ([least, ms]) => {
        const { ear } = (window as unknown as Watched).screensWatch;
        const now = performance.now();
        return ear.share(now - ms, now) >= least;
      },
      [DECODING, STRETCH_MS] as const,
      { timeout: PATIENCE_MS },
    )
    .catch(() => undefined);
}

/** How busy the recogniser was from one moment to another, and about these moments; shares in percent. */
export function busyness({ work, utterances }: EarWork, from: number, to: number, moments: readonly number[]) {
  const spentIn = (begin: number, end: number): number =>
    work.reduce((sum, block) => sum + Math.max(0, Math.min(end, block.to) - Math.max(begin, block.from)), 0);
  const about = moments.map((at) => spentIn(at - STRETCH_MS / 2, at + STRETCH_MS / 2) / STRETCH_MS);
  const percent = (share: number): number => Math.round(100 * share);
  return {
    seconds: Math.round((to - from) / 1000),
    utterances: utterances.filter(({ endedAt }) => endedAt >= from && endedAt <= to).length,
    workedPercent: percent(spentIn(from, to) / (to - from)),
    workedAboutPercent: percent(about.reduce((sum, share) => sum + share, 0) / about.length),
    /** Of the taps and keys, those that came while it decoded. */
    intoDecodingPercent: percent(about.filter((share) => share >= DECODING).length / about.length),
    longestBlockMs: Math.round(Math.max(0, ...work.map((block) => block.to - block.from))),
  };
}
