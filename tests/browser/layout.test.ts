import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Notice } from '../../src/ui/notices';
import type { ScreenKey } from '../../src/ui/words/words';
import type { BenchPage, Shown } from './bench-page/bench-page';
import type { Look } from './bench-page/look';
import { openBenchPage } from './bench-page/open';
import { benchesOf, type PlacedBench, type Spoken, shippedIn, spokenIn } from './bench-views';
import { chromiumPath, openContext } from './chromium';
import type { Site } from './site';

// The Bench is drawn as it stands at every place of every shipped procedure, and measured as the browser lays it out.

const TABLETS = [
  { width: 800, height: 1280 },
  { width: 1280, height: 800 },
];
const SIZES = [...TABLETS, { width: 1440, height: 900 }, { width: 390, height: 844 }];
/** The other way of holding a phone: looked at in fewer places. */
const PHONE_LYING = { width: 844, height: 390 };

/** Millimetres of capitals on a ten-inch tablet: seven tenths of a font size, 5.94 pixels each. */
const capitals = (fontSize: number): number => (fontSize * 0.7) / 5.94;

/** "A line of more than 110 characters beside a drawing": the one exception to 6 mm. */
const isException = ({ screen: { view } }: PlacedBench): boolean => view.drawing !== null && view.line.length > 110;

const LANGUAGES = ['en', 'fr'] as const;

describe.skipIf(!chromiumPath)('the Bench as it is drawn', () => {
  let site: Site;
  let context: BrowserContext;
  let page: Page;
  const spoken = new Map<string, Spoken>();
  const benches = new Map<string, readonly PlacedBench[]>();

  beforeAll(async () => {
    for (const language of LANGUAGES) {
      const words = spokenIn(language);
      spoken.set(language, words);
      benches.set(
        language,
        shippedIn(language).flatMap((procedure) => benchesOf(procedure, words)),
      );
    }
    site = await openBenchPage();
    context = await openContext();
    page = await context.newPage();
    await page.goto(site.address);
    await page.waitForFunction(() => 'benchPage' in window);
  }, 300_000);
  afterAll(async () => {
    await context?.close();
    await site?.close();
  });

  type Change = Partial<Pick<Shown, 'notices' | 'textSize' | 'theme'>>;

  /** Draws every so-many-th place, and says what was found wrong by kind. */
  async function looked(language: string, size: (typeof SIZES)[number], every = 1, change: Change = {}) {
    await page.setViewportSize(size);
    const { words } = spoken.get(language) ?? expect.unreachable();
    const places = (benches.get(language) ?? []).filter((_, n) => n % every === 0);
    const usual = { jobOpen: true, notices: [], theme: 'day', textSize: 'usual', words } as const;
    const shown = places.map(({ screen }): Shown => ({ ...usual, screen, ...change }));
    const looks = await page.evaluate(
      (all) => (window as unknown as { benchPage: BenchPage }).benchPage.each(all),
      shown,
    );
    return looks.map((look, n) => ({ ...look, place: places[n] ?? expect.unreachable() }));
  }

  type Looked = Awaited<ReturnType<typeof looked>>;
  const faults = (all: Looked, kind: Exclude<keyof Look, 'fontSizes'>): readonly string[] =>
    all.flatMap((look) => look[kind].map((fault) => `${look.place.where}: ${fault}`));
  /** What was answered scrolls by whole lines, by design. */
  const scrolling = (all: Looked): readonly string[] =>
    faults(all, 'scrolls').filter((one) => !one.includes(': .ear '));
  const lowest = (all: Looked, of: 'value' | 'line'): number =>
    Math.min(...all.flatMap((look) => (look.fontSizes[of] === null ? [] : [capitals(look.fontSizes[of])])));

  describe.each(LANGUAGES)('in %s', (language) => {
    test.each(SIZES)('is whole at $width x $height, at every place of every shipped procedure', async (size) => {
      const all = await looked(language, size);
      console.log(`${language} ${size.width}x${size.height}: ${all.length} places drawn`);
      expect(all.length).toBeGreaterThan(30);
      expect(faults(all, 'cut')).toEqual([]);
      // A phone is scrolled as a page; nothing inside the page scrolls there but what was answered.
      expect(scrolling(all).filter((one) => size.width > 600 || !one.includes(': .app-screen '))).toEqual([]);
    });

    test.each(TABLETS)('is large enough at $width x $height', async (size) => {
      const all = await looked(language, size, 3);
      expect(lowest(all, 'value')).toBeGreaterThanOrEqual(12);
      expect(
        lowest(
          all.filter(({ place }) => !isException(place)),
          'line',
        ),
      ).toBeGreaterThanOrEqual(6);
      expect(lowest(all, 'line')).toBeGreaterThanOrEqual(4.2);
      expect(faults(all, 'small')).toEqual([]);
    });

    test.each([...TABLETS, PHONE_LYING])(
      'is whole at $width x $height with notices, and with large text',
      async (size) => {
        const { words } = spoken.get(language) ?? expect.unreachable();
        const act = (key: ScreenKey) => ({ label: words[key], event: { type: 'end-tour' } }) as const;
        const tour: Notice = { id: 'tour', kind: 'news', text: words['tour-step'], acts: [act('tour-skip')] };
        const trouble: Notice = { id: 'log', kind: 'trouble', text: words['not-saved'], acts: [act('save-copy')] };
        const voice: Notice = { id: 'voice', kind: 'news', text: words['voice-none'] };
        const changes: readonly Change[] = [
          { notices: [tour] },
          { notices: [trouble, voice] },
          { textSize: 'large' },
          { textSize: 'largest' },
        ];
        for (const change of changes) {
          const all = await looked(language, size, 9, change);
          expect(faults(all, 'cut')).toEqual([]);
          if (size !== PHONE_LYING) expect(faults(all, 'small')).toEqual([]);
        }
      },
    );
  });
});
