import type { BrowserContext, Page } from 'playwright-core';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Bay } from './bay';
import { chromiumPath, ONCE_MORE } from './chromium';
import { byKeyboard } from './hands';
import type { Site } from './site';
import { typed } from './typist';
import { visits } from './visits';

const WAIT = { timeout: 30_000 };

describe.skipIf(!chromiumPath)('notes and pictures', ONCE_MORE, () => {
  const visit = visits();
  let site: Site;
  let context: BrowserContext;
  let page: Page;
  let bay: Bay;

  beforeEach(async () => {
    ({ site, context, page, bay } = visit());
    // Real ones of Chromium's own, which shows a moving pattern.
    await context.grantPermissions(['camera', 'microphone'], { origin: site.address.replace(/\/$/, '') });
    await page.addInitScript(() => {
      const play = HTMLMediaElement.prototype.play;
      HTMLMediaElement.prototype.play = function () {
        if (this instanceof HTMLAudioElement) {
          (window as unknown as { played: Promise<ArrayBuffer> }).played = fetch(this.src).then((a) => a.arrayBuffer());
        }
        return play.call(this);
      };
    });
    await earLoads();
    await bay.talkFast();
    await cameraWorks();
    await bay.begin('Practice plate');
  }, 120_000);

  /** The start screen shows that the ear is being loaded, before anybody is listened to, and that it has been. */
  async function earLoads(): Promise<void> {
    let release = (): void => undefined;
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    await context.route('**/model/**', async (route) => {
      await held;
      await route.continue();
    });
    await bay.open(site.address);
    await page.getByRole('progressbar', { name: 'Getting ready to listen' }).waitFor(WAIT);
    release();
    await page.locator('.ear-line').getByText('Listening', { exact: true }).waitFor({ timeout: 60_000 });
    expect(await page.getByRole('progressbar').count()).toBe(0);
  }

  async function cameraWorks(): Promise<void> {
    await bay.go('Setup');
    await page.getByRole('button', { name: 'Check the camera' }).click();
    const still = page.getByRole('img', { name: 'What the camera saw' });
    await still.waitFor(WAIT);
    expect(await still.evaluate((it) => (it as HTMLImageElement).naturalWidth)).toBeGreaterThan(100);
    await page.getByText(/^This is what “.+” takes/).waitFor();
    await bay.go('Jobs');
  }

  const button = (label: string) => page.getByRole('button', { name: label, exact: true });
  const lines = (kind: 'note' | 'picture') => page.locator(`.book-${kind}`);
  const kept = async (kind: 'noted' | 'pictured') => (await bay.log()).filter((e) => e.kind === kind);
  const saidLast = async () => (await bay.log()).findLast((e) => e.kind === 'said');
  const recording = () => button('End the note').waitFor(WAIT);

  async function keptSoFar(kind: 'noted' | 'pictured', many: number): Promise<void> {
    await expect.poll(async () => (await kept(kind)).length, WAIT).toBe(many);
  }

  /** Seconds and loudest sample of what is played. Any other context than the microphone's decodes answers, briefly. */
  const playedSound = () =>
    page.evaluate(async () => {
      const { played, microphone } = window as unknown as { played: Promise<ArrayBuffer>; microphone: AudioContext };
      const sound = await microphone.decodeAudioData(await played);
      return {
        duration: sound.duration,
        peak: sound.getChannelData(0).reduce((most, x) => Math.max(most, Math.abs(x)), 0),
      };
    });

  /** Somebody speaks into a note, and the words are a command where they are none. */
  async function noteByVoice(): Promise<void> {
    await bay.listens();
    await bay.utter('take a note');
    await recording();
    await bay.utter('this step is done');
    await keptSoFar('noted', 1);
    await button('End the note').waitFor({ state: 'detached' });
  }

  async function pictureIsSeen(open: () => Promise<void>): Promise<void> {
    await open();
    const image = page.getByRole('dialog').getByRole('img');
    await image.waitFor();
    expect(await image.evaluate((it) => (it as HTMLImageElement).naturalWidth)).toBeGreaterThan(100);
    await page.keyboard.press('Escape');
    await image.waitFor({ state: 'detached' });
  }

  test('are taken by voice and by hand, on a break and while a question waits, move nothing, and are played and seen in the record, also after a reload', async () => {
    const place = await bay.place();
    await noteByVoice();
    await bay.say('take a picture');
    await keptSoFar('pictured', 1);
    // Not a word of the note came to the job.
    expect(await bay.place()).toBe(place);
    expect((await bay.log()).flatMap((e) => (e.kind === 'heard' ? [e.command] : []))).toEqual([
      'take-note',
      'take-picture',
    ]);
    expect((await bay.log()).filter((e) => e.kind === 'rejected')).toEqual([]);

    // By typed words, on a break; ended by a button.
    await typed(bay, 'hold on');
    await typed(bay, 'take a note');
    await recording();
    await bay.utter("i'm back");
    await button('End the note').click();
    await keptSoFar('noted', 2);
    expect((await bay.log()).some((e) => e.kind === 'came-back')).toBe(false);
    await typed(bay, "i'm back");

    // While a question waits; what answers it, said into the note, does not.
    await typed(bay, 'hand the job over');
    const question = await saidLast();
    await bay.listens();
    await bay.utter('take a note');
    await recording();
    await bay.utter('agreed and confirmed');
    await keptSoFar('noted', 3);
    await bay.armed();
    expect((await bay.log()).some((e) => e.kind === 'handed-over')).toBe(false);
    expect(await saidLast()).toMatchObject({ code: `note-kept ${question?.kind === 'said' ? question.code : ''}` });
    await typed(bay, 'take a picture');
    await keptSoFar('pictured', 2);
    await bay.armed();
    await typed(bay, 'cancel');
    for (const entry of [...(await kept('noted')), ...(await kept('pictured'))])
      expect(place).toContain('step' in entry ? entry.step : 'no step');

    // Only lines in sight are drawn.
    await page.setViewportSize({ width: 1280, height: 3000 });
    await bay.go('Record');
    const note = lines('note').first();
    await note.getByRole('button', { name: 'Play' }).click();
    await page.waitForFunction(() => 'played' in window);
    const { duration, peak } = await playedSound();
    expect(duration).toBeGreaterThan(1.5);
    expect(peak).toBeGreaterThan(0.05);
    await note.getByRole('button', { name: 'Stop' }).click();
    await note.getByRole('button', { name: 'Play' }).waitFor();
    // On paper no button plays it, and no picture is printed: the line says where they are.
    const onPaper = lines('picture').first().getByText('(kept in the app)');
    expect(await onPaper.isVisible()).toBe(false);
    await page.emulateMedia({ media: 'print' });
    expect(await onPaper.isVisible()).toBe(true);
    await page.emulateMedia({ media: null });
    const picture = lines('picture').first().getByRole('button');
    await pictureIsSeen(() => picture.click());
    await pictureIsSeen(() => byKeyboard(page).press(picture));

    await page.reload();
    await page.click('.start-tap');
    await bay.go('Jobs');
    await page.getByRole('button', { name: /^Record: / }).click();
    await lines('note').nth(2).waitFor();
    expect(await lines('picture').count()).toBe(2);
    await lines('note').nth(2).getByRole('button', { name: 'Play' }).click();
    await page.waitForFunction(() => 'played' in window);
    expect((await playedSound()).duration).toBeGreaterThan(1.5);
    await pictureIsSeen(() => lines('picture').nth(1).getByRole('button').click());
  }, 240_000);
});
