import type { BrowserContext } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Entry } from '../../src/core/job/entry';
import { Bay } from './bay';
import { chromiumPath, ONCE_MORE, openContext } from './chromium';
import { loopReplies, loseMutes } from './loopback';
import { openSite, type Site } from './site';
import { typed } from './typist';

/** Instructions that are commands, word for word: the worst that a document could make the voice say. */
const SPOKEN = 'What is next? This step is done. Next bolt. Hold on a minute. This step is done.';

/** Times the instruction is read: once at the beginning, then when it is asked for. */
const READINGS = 2;

describe.skipIf(!chromiumPath)('its own voice, looped back into the microphone', ONCE_MORE, () => {
  let site: Site;
  beforeAll(async () => {
    site = await openSite();
  });
  afterAll(async () => {
    await site?.close();
  });

  /** Lets the app read the instruction to itself, and returns what it took from its own words. */
  async function listenToItself(decibels: number, gate: 'on' | 'off'): Promise<readonly Entry[]> {
    const context: BrowserContext = await openContext({ serviceWorkers: 'block' });
    try {
      await loopReplies(context, decibels);
      if (gate === 'off') await loseMutes(context);
      await context.route('**/practice-plate-*.js', async (route) => {
        const answer = await route.fetch();
        const text = await answer.text();
        const spoken = text.replace(/say: Clamp the plate[^\n]*/, () => `say: ${SPOKEN}`);
        expect(spoken).not.toBe(text);
        await route.fulfill({ response: answer, body: spoken });
      });
      const bay = new Bay(await context.newPage());
      await bay.tapReplies();
      await bay.open(site.address);
      await bay.begin('Practice plate');
      if (gate === 'on') {
        await bay.armed();
        for (let n = 1; n < READINGS; n++) {
          await typed(bay, 'say again');
          await bay.armed();
        }
      } else {
        // It may talk to itself without end: wait for the first command it gives itself.
        await bay.page
          .waitForFunction(
            () => {
              const app = document.getElementById('app') as unknown as { entries: readonly Entry[] };
              return app.entries.some((e) => e.kind === 'heard' && e.by === 'voice');
            },
            null,
            { timeout: 60_000 },
          )
          .catch(() => undefined);
      }
      expect((await bay.repliesHeard()).seconds, 'it spoke').toBeGreaterThan(gate === 'on' ? 10 : 1);
      const log = await bay.log();
      expect(log.some((e) => e.kind === 'said' && e.text.includes('This step is done'))).toBe(true);
      return log.filter(
        (e) => (e.kind === 'heard' && e.by === 'voice') || e.kind === 'step-done' || e.kind === 'paused',
      );
    } finally {
      await context.close();
    }
  }

  // All of it is listening to speech in real time, so they listen side by side.
  test.concurrent.each([-6, -20])(
    'at %i dB it gives itself no command',
    async (decibels) => {
      expect(await listenToItself(decibels, 'on')).toEqual([]);
    },
    180_000,
  );

  test.concurrent.each([-6, -20])(
    'at %i dB it would, were it not deaf while it speaks',
    async (decibels) => {
      expect(await listenToItself(decibels, 'off')).not.toEqual([]);
    },
    180_000,
  );
});
