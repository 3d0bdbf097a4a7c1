import type { Page } from 'playwright-core';

type Watch = { readonly stirred: () => readonly string[] };

/**
 * Watches the Bench from before the app starts. Its areas keep their boxes while the place of the work, what waits for an
 * answer, the notices and the window stay as they are; and nothing outside the strip of the ear shifts by what the browser
 * itself reports, while only that strip changes. What is heard and said flows inside its own box.
 */
export async function watchStillness(page: Page): Promise<void> {
  await page.addInitScript(() => {
    type Shift = PerformanceEntry & { readonly sources: readonly { readonly node: Node | null }[] };
    const moved: string[] = [];
    const shifts: Shift[] = [];
    const frames: { readonly at: number; readonly texts: string | null }[] = [];

    const areasOf = (bench: Element): readonly Element[] =>
      [...bench.children].filter((area) => !area.matches('dialog'));
    /** What may move an area when it changes. */
    const reasonsNow = (bench: Element): string =>
      [
        document.getElementById('app')?.dataset.place,
        bench.className,
        bench.querySelector('.bench-hazards')?.textContent,
        document.querySelector('.notices')?.textContent,
        innerWidth,
        innerHeight,
      ].join(' | ');
    const boxesOf = (bench: Element): string =>
      areasOf(bench)
        .map((area) => {
          const { left, top, width, height } = area.getBoundingClientRect();
          return [area.className, left, top, width, height].join(' ');
        })
        .join('; ');
    /** Everything that is shown but what is heard and said. */
    const textsNow = (bench: Element): string =>
      reasonsNow(bench) +
      areasOf(bench)
        .filter((area) => !area.matches('.bench-ear'))
        .map((area) => area.textContent)
        .join(' | ');

    let before = { reasons: '', boxes: '' };
    const look = (at: number): void => {
      const bench = document.querySelector('.bench');
      const now = bench ? { reasons: reasonsNow(bench), boxes: boxesOf(bench) } : { reasons: '', boxes: '' };
      if (now.reasons !== '' && now.reasons === before.reasons && now.boxes !== before.boxes)
        moved.push(`${now.reasons}: ${before.boxes} became ${now.boxes}`);
      before = now;
      frames.push({ at, texts: bench && textsNow(bench) });
      requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
    new PerformanceObserver((list) => {
      shifts.push(...(list.getEntries() as unknown as readonly Shift[]));
    }).observe({ type: 'layout-shift', buffered: true });

    /** Shifts in frames with the same texts before and after: the app draws in the same frames as this looks. */
    const groundless = (): readonly string[] =>
      shifts.flatMap(({ startTime, sources }) => {
        const at = frames.findLastIndex((frame) => frame.at <= startTime);
        const about = frames.slice(Math.max(0, at - 2), at + 3).map(({ texts }) => texts);
        const texts = about[0] ?? null;
        if (texts === null || about.some((one) => one !== texts)) return [];
        const names = sources.flatMap(({ node }) => {
          const element = node instanceof Element ? node : node?.parentElement;
          return element?.closest('.bench') && !element.closest('.ear') ? [element.className || element.tagName] : [];
        });
        return names.length > 0 ? [`${texts}: the browser saw ${names.join(', ')} shift`] : [];
      });
    Object.assign(window, { stillness: { stirred: () => [...moved, ...groundless()] } });
  });
}

/** What moved so far without a reason. */
export const stirred = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => (window as unknown as { stillness: Watch }).stillness.stirred());

/** Moves something on purpose, once, to see that both ways of watching see it. */
export async function stir(page: Page): Promise<void> {
  await page.evaluate(() => {
    const area = document.querySelector<HTMLElement>('.bench-words');
    if (area) area.style.marginTop = '30px';
  });
  const sees = (what: string) =>
    page.waitForFunction(
      (sought) => (window as unknown as { stillness: Watch }).stillness.stirred().some((one) => one.includes(sought)),
      what,
    );
  await sees(' became ');
  await sees('the browser saw');
}
