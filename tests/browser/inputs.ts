import type { Page } from 'playwright-core';

type Inputs = { readonly pulled: Set<string>; readonly tracks: MediaStreamTrack[]; asked: string };

/**
 * Chromium's fake microphones, after `wireMicrophone`: whichever is asked for is written down, and one that was pulled out is
 * neither listed nor given. What they give is the test's own sound.
 */
export async function pullableInputs(page: Page): Promise<void> {
  await page.context().grantPermissions(['microphone']);
  await page.addInitScript(() => {
    const inputs: Inputs = { pulled: new Set(), tracks: [], asked: 'none yet' };
    Object.assign(window, { inputs });
    const { mediaDevices } = navigator;
    const all = mediaDevices.enumerateDevices.bind(mediaDevices);
    const give = mediaDevices.getUserMedia.bind(mediaDevices);
    const there = async () => (await all()).filter(({ label }) => !inputs.pulled.has(label));
    mediaDevices.enumerateDevices = there;
    mediaDevices.getUserMedia = async (wanted) => {
      const audio = wanted?.audio;
      const id = typeof audio === 'object' ? (audio.deviceId as { exact?: string } | undefined)?.exact : undefined;
      const found = (await there()).find(({ deviceId }) => deviceId === id);
      if (id !== undefined && !found) throw new DOMException('gone', 'OverconstrainedError');
      inputs.asked = found?.label ?? "the machine's own choice";
      const stream = await give(wanted);
      inputs.tracks.push(...stream.getTracks());
      return stream;
    };
  });
}

/** The name of the one that was opened last. */
export const askedFor = (page: Page): Promise<string> =>
  page.evaluate(() => (window as unknown as { inputs: Inputs }).inputs.asked);

/** Whether the one that was opened last still gives sound to the page. */
export const isOpen = (page: Page): Promise<boolean> =>
  page.evaluate(() => (window as unknown as { inputs: Inputs }).inputs.tracks.at(-1)?.readyState === 'live');

/** Pulls one out: whatever it gives ends, and the page is told. */
export const pullOut = (page: Page, name: string): Promise<void> =>
  page.evaluate((label) => {
    const { pulled, tracks } = (window as unknown as { inputs: Inputs }).inputs;
    pulled.add(label);
    tracks.at(-1)?.stop();
    tracks.at(-1)?.dispatchEvent(new Event('ended'));
    navigator.mediaDevices.dispatchEvent(new Event('devicechange'));
  }, name);

export const plugIn = (page: Page, name: string): Promise<void> =>
  page.evaluate((label) => {
    (window as unknown as { inputs: Inputs }).inputs.pulled.delete(label);
    navigator.mediaDevices.dispatchEvent(new Event('devicechange'));
  }, name);
