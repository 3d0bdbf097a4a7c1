import { readFileSync } from 'node:fs';
import type { BrowserContext } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findings } from './axe';
import { Bay } from './bay';
import { chromiumPath, ONCE_MORE, openContext } from './chromium';
import { openSite, type Site } from './site';
import { typed } from './typist';

/** Said again as often as a person would before using the buttons. */
const TRIES = 4;

/** Plays a recording into the microphone until the ear makes something of it. */
async function play(bay: Bay, file: string): Promise<void> {
  const wav = readFileSync(`${import.meta.dirname}/../speech/french/${file}`).toString('base64');
  const before = await bay.entries();
  for (let n = 0; n < TRIES && (await bay.entries()) === before; n++) {
    await bay.armed();
    await bay.page.waitForTimeout(500);
    await bay.page.evaluate(
      (clip) => (window as unknown as { playClip: (w: string) => Promise<void> }).playClip(clip),
      wav,
    );
    await bay.page
      .waitForFunction((count) => Number(document.getElementById('app')?.dataset.entries) > count, before, {
        timeout: 6_000,
      })
      .catch(() => undefined);
  }
}

describe.skipIf(!chromiumPath)('the app in French', ONCE_MORE, () => {
  let site: Site;
  let context: BrowserContext;
  let bay: Bay;
  beforeAll(async () => {
    site = await openSite();
    context = await openContext({ serviceWorkers: 'block' });
    bay = new Bay(await context.newPage());
    bay.page.setDefaultTimeout(8000);
    await bay.wireMicrophone();
    await bay.open(site.address);
  });
  afterAll(async () => {
    await context.close();
    await site.close();
  });

  const language = () => bay.page.getAttribute('html', 'lang');
  const notice = (text: string) => bay.page.locator('.notice', { hasText: text }).waitFor();
  const choose = async (setup: string, name: string): Promise<void> => {
    await bay.go(setup);
    await bay.page.getByRole('radio', { name }).click();
  };

  test('it is chosen in Setup, never under a job, and takes hold on its own', async () => {
    expect(await language()).toBe('en');
    await bay.go('Jobs');
    await bay.begin('Practice plate');
    await choose('Setup', 'Français');
    await notice('The language changes when this job is left');
    expect(await language()).toBe('en');
    await bay.page.reload();
    await bay.page.getByRole('button', { name: 'Toucher pour commencer' }).waitFor();
    expect(await language()).toBe('fr');
  }, 60_000);

  test('a machine without a French voice says so on the screen, and offers no English one', async () => {
    await notice("Cette machine n'a pas de voix française");
    expect(await findings(bay.page)).toEqual([]);
    await bay.go('Réglages');
    await bay.page.getByText('Quelle voix').waitFor();
    expect(await findings(bay.page)).toEqual([]);
    expect(await bay.page.getByRole('radio', { name: 'La voix intégrée' }).count()).toBe(0);
    expect(await bay.page.getByRole('radio', { name: 'Celle de cette machine' }).isDisabled()).toBe(true);
  }, 30_000);

  test('a document and a job in English can be read, and why they cannot be worked is told', async () => {
    await bay.go('Procédures');
    const line = bay.page.locator('li', { hasText: 'Practice plate' });
    await line.getByText('Écrite dans une autre langue (en)').waitFor();
    await line.getByRole('button', { name: /^Lire/ }).click();
    await bay.page.getByRole('heading', { name: 'Get ready' }).waitFor();
    expect(await bay.page.getByRole('button', { name: 'Répéter à blanc' }).count()).toBe(0);
    await bay.go('Travaux');
    await bay.page
      .getByRole('button', { name: /^Reprendre/ })
      .first()
      .click();
    await notice('est écrit dans une autre langue (en)');
    await bay.page.locator('.record').waitFor();
    expect(await findings(bay.page)).toEqual([]);
  }, 30_000);

  test('what is wrong with a document brought along is told in French', async () => {
    await bay.go('Procédures');
    const text = readFileSync('procedures/plaque-essai.yaml', 'utf8').replace('torque: 15 N·m', 'torque: 15');
    const file = { name: 'cassee.yaml', mimeType: 'application/yaml', buffer: Buffer.from(text) };
    await bay.page.locator('input[type=file]').setInputFiles(file);
    await bay.page.locator('.issue', { hasText: '« 15 » est sans unité.' }).waitFor();
    expect(await findings(bay.page)).toEqual([]);
    await bay.page.locator('.issue', { hasText: 'Écrire l’unité que le manuel imprime.' }).waitFor();
  }, 30_000);

  test('the plate is worked in French, typed and spoken, with the French model and no other', async () => {
    const asked = site.asked.length;
    await bay.page.reload();
    await bay.page.getByRole('button', { name: 'Toucher pour commencer' }).click();
    await bay.go('Procédures');
    await bay.page.locator('li', { hasText: "Plaque d'essai" }).getByRole('button', { name: /^Lire/ }).click();
    await bay.page.getByRole('button', { name: 'Répéter à blanc' }).click();
    await bay.page.waitForSelector('.bench');
    await play(bay, 'again.wav');
    const heard = (await bay.log()).findLast(({ kind }) => kind === 'heard' || kind === 'rejected');
    expect(heard).toMatchObject({ kind: 'heard', words: 'répète encore' });
    for (const words of [
      'cette étape est terminée',
      'je vois en haut côté poignée',
      'cette étape est terminée',
      "j'ai assez de temps",
      'réglée à quinze',
      'boulon un terminé',
    ])
      expect((await typed(bay, words)).filter(({ kind }) => kind === 'rejected')).toEqual([]);
    expect(await bay.place()).toBe('tighten.tighten-plate.first.work');
    await bay.page.getByText('Boulon 3, en haut').first().waitFor();
    const paths = site.asked.slice(asked);
    expect(paths.some((path) => path.includes('model/fr-fr/'))).toBe(true);
    expect(paths.filter((path) => /model\/en-us|language-en/.test(path))).toEqual([]);
  }, 120_000);

  test('and back: the choice is made again without a job', async () => {
    await bay.page.reload();
    await bay.page.getByRole('button', { name: 'Toucher pour commencer' }).click();
    await choose('Réglages', 'English');
    await bay.page.getByRole('button', { name: 'Tap to start' }).waitFor();
    expect(await language()).toBe('en');
    expect(bay.troubles.filter((text) => !text.includes('Service Worker'))).toEqual([]);
  }, 60_000);
});
