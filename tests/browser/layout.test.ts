import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Notice } from '../../src/ui/notices';
import type { ScreenKey, ScreenWords } from '../../src/ui/words/words';
import { findings } from './axe';
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

const usually = (words: ScreenWords) =>
  ({ jobOpen: true, notices: [], theme: 'day', textSize: 'usual', words }) as const;

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

  type Picked = (place: PlacedBench, n: number) => boolean;
  const every =
    (many: number): Picked =>
    (_, n) =>
      n % many === 0;
  const atWork: Picked = ({ where }) => where.endsWith('.work');

  /** Draws the places that are picked, one after the other, and looks at each. */
  async function looked(language: string, size: (typeof SIZES)[number], pick: Picked = every(1), change: Change = {}) {
    await page.setViewportSize(size);
    const { words } = spoken.get(language) ?? expect.unreachable();
    const places = (benches.get(language) ?? []).filter(pick);
    const shown = places.map(({ screen }): Shown => ({ ...usually(words), screen, ...change }));
    const looks = await page.evaluate(
      (all) => (window as unknown as { benchPage: BenchPage }).benchPage.each(all),
      shown,
    );
    return looks.map((look, n) => ({ ...look, place: places[n] ?? expect.unreachable() }));
  }

  /** Draws one Bench by day and dim and lets axe look at it, and at a sheet on it that a button brings. */
  async function checked(name: string, shown: Shown, opener?: string): Promise<void> {
    for (const theme of page.viewportSize()?.width === 390 ? (['dim'] as const) : (['day', 'dim'] as const)) {
      await page.evaluate((one) => (window as unknown as { benchPage: BenchPage }).benchPage.draw(one), {
        ...shown,
        theme,
      });
      // A phone's page goes on under its buttons; at its foot they cover nothing.
      await page.locator('.app-screen').evaluate((screen) => {
        screen.scrollTop = screen.scrollHeight;
      });
      if (opener) {
        await page.locator(opener).click();
        await page.locator('dialog[open] .sheet-title').waitFor();
      }
      expect.soft({ name, theme, found: await findings(page) }).toEqual({ name, theme, found: [] });
      if (opener) {
        await page.keyboard.press('Escape');
        await page.locator('dialog[open]').waitFor({ state: 'detached' });
      }
    }
  }

  type Looked = Awaited<ReturnType<typeof looked>>;
  const faults = (all: Looked, kind: Exclude<keyof Look, 'fontSizes' | 'areas'>): readonly string[] =>
    all.flatMap((look) => look[kind].map((fault) => `${look.place.where}: ${fault}`));
  /** What was answered scrolls by whole lines, by design. */
  const scrolling = (all: Looked): readonly string[] =>
    faults(all, 'scrolls').filter((one) => !one.includes(': .ear '));
  const lowest = (all: Looked, of: 'value' | 'line'): number =>
    Math.min(...all.flatMap((look) => (look.fontSizes[of] === null ? [] : [capitals(look.fontSizes[of])])));

  test.each(TABLETS)('keeps its areas from bolt to bolt at $width x $height', async (size) => {
    const byPass = new Map<string, Looked[number][]>();
    for (const one of await looked('en', size, atWork))
      byPass.set(one.place.where, [...(byPass.get(one.place.where) ?? []), one]);
    const worked = [...byPass.values()].filter((bolts) => bolts.length > 1);
    expect(worked.length).toBeGreaterThan(0);
    for (const [first, ...others] of worked)
      for (const other of others)
        expect({ where: other.place.where, areas: other.areas }).toEqual({
          where: first?.place.where,
          areas: first?.areas,
        });
  });

  describe.each(LANGUAGES)('in %s', (language) => {
    test.each(SIZES)('is whole at $width x $height, at every place of every shipped procedure', async (size) => {
      const all = await looked(language, size);
      console.log(`${language} ${size.width}x${size.height}: ${all.length} places drawn`);
      expect(all.length).toBeGreaterThan(30);
      expect(faults(all, 'cut')).toEqual([]);
      // A phone is scrolled as a page; nothing inside the page scrolls there but what was answered.
      expect(scrolling(all).filter((one) => size.width > 600 || !one.includes(': .app-screen '))).toEqual([]);
    });

    test.each([TABLETS[1], SIZES[3]])('has nothing that axe calls a violation, at $width x $height', async (size) => {
      await page.setViewportSize(size ?? expect.unreachable());
      const { words } = spoken.get(language) ?? expect.unreachable();
      const usual = usually(words);
      const all = benches.get(language) ?? expect.unreachable();
      // Each mood, with and without each kind of hazard, and with and without a drawing.
      const kinds = new Map(
        all.map(({ where, screen }) => {
          const { mood, hazards, drawing } = screen.view;
          return [[mood, ...new Set(hazards.map((h) => h.kind)), drawing !== null].join(' '), { where, screen }];
        }),
      );
      expect(new Set([...kinds.values()].map(({ screen }) => screen.view.mood)).size).toBe(4);
      for (const { where, screen } of kinds.values()) await checked(where, { ...usual, screen });

      const one = all.find(({ screen }) => screen.view.value !== null);
      const { screen, tappable } = one ?? expect.unreachable();
      const view = { ...screen.view, wrenches: [{ id: 'w', words: 'w' }], looseEnds: ['l'] };
      const sheets = { ...usual, screen: { ...screen, sentences: tappable(), view } };
      for (const opener of ['.words-all', '.status-ends', '.bench-screens', '.work-wrenches'])
        await checked(opener, sheets, opener);
      const trouble: Notice = { id: 'log', kind: 'trouble', text: words['not-saved'] };
      const failed = { ...screen.ear, state: 'failed', trouble: words['ear-failed'] } as const;
      await checked('trouble', { ...usual, notices: [trouble], screen: { ...screen, ear: failed } });
    });

    test.each(TABLETS)('is large enough at $width x $height', async (size) => {
      const all = await looked(language, size, every(3));
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
          const all = await looked(language, size, every(9), change);
          expect(faults(all, 'cut')).toEqual([]);
          if (size !== PHONE_LYING) expect(faults(all, 'small')).toEqual([]);
        }
      },
    );
  });
});
