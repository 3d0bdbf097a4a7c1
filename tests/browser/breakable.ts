import type { Page } from 'playwright-core';

type Broken = {
  /** Every track that the app was given, the newest last. */
  readonly tracks: MediaStreamTrack[];
  readonly door: { microphone: 'open' | 'refused'; sound: 'open' | 'held' };
  readonly permission: EventTarget;
  readonly Howler: { readonly ctx: AudioContext };
};

/** Keeps hold of the page's microphone and sound, after `wireMicrophone`, so that a test can take them away and give them back. */
export async function breakable(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const tracks: MediaStreamTrack[] = [];
    const door: Broken['door'] = { microphone: 'open', sound: 'open' };
    const permission = new EventTarget();
    Object.assign(window, { tracks, door, permission });
    navigator.permissions.query = async () => permission as PermissionStatus;
    const give = navigator.mediaDevices.getUserMedia;
    navigator.mediaDevices.getUserMedia = async (asked) => {
      if (door.microphone === 'refused') throw new DOMException('withdrawn', 'NotAllowedError');
      const stream = await give(asked);
      tracks.push(...stream.getTracks());
      return stream;
    };
    const resume = AudioContext.prototype.resume;
    AudioContext.prototype.resume = function (this: AudioContext) {
      return door.sound === 'held' ? new Promise(() => undefined) : resume.call(this);
    };
  });
}

/** What the browser does to the track when the microphone is unplugged, or muted outside the page. */
export const happens = (page: Page, what: 'ended' | 'mute' | 'unmute'): Promise<void> =>
  page.evaluate((type) => {
    const track = (window as unknown as Broken).tracks.at(-1);
    if (type === 'ended') track?.stop();
    track?.dispatchEvent(new Event(type));
  }, what);

export const tracksGiven = (page: Page): Promise<number> =>
  page.evaluate(() => (window as unknown as Broken).tracks.length);

/** A headset is plugged in: told of more than once, as browsers do. */
export const deviceComes = (page: Page): Promise<void> =>
  page.evaluate(() => {
    for (let n = 0; n < 3; n++) navigator.mediaDevices.dispatchEvent(new Event('devicechange'));
  });

/** The permission is taken or given in the browser's settings. */
export const microphoneIs = (page: Page, is: Broken['door']['microphone']): Promise<void> =>
  page.evaluate((state) => {
    const { door, permission } = window as unknown as Broken;
    door.microphone = state;
    permission.dispatchEvent(new Event('change'));
  }, is);

/** The system takes the sound away, as for a phone call, and lets the page have it again only when it is not `held`. */
export const soundIs = (page: Page, is: Broken['door']['sound']): Promise<void> =>
  page.evaluate(async (state) => {
    const { door, Howler } = window as unknown as Broken;
    door.sound = state;
    if (state === 'held') await Howler.ctx.suspend();
  }, is);

/** The newest worker of this kind does nothing else for so long. Not waited for: the one in it may be ended first. */
export function keepBusy(page: Page, kind: string, ms: number): void {
  const worker = page.workers().findLast((one) => one.url().includes(kind));
  if (!worker) throw new Error(`no ${kind}`);
  void worker
    .evaluate((long) => {
      const until = performance.now() + long;
      while (performance.now() < until);
    }, ms)
    .catch(() => undefined);
}
