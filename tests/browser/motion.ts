import type { Page } from 'playwright-core';

/** What moves by itself on the page, or would when it changes: whoever asked for less motion is to see none. */
export const motion = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('*')].flatMap((element) =>
      [undefined, '::before', '::after', '::backdrop'].flatMap((pseudo) => {
        const { transitionDuration, animationName, scrollBehavior } = getComputedStyle(element, pseudo);
        const moves = /[1-9]/.test(transitionDuration) || animationName !== 'none' || scrollBehavior === 'smooth';
        return moves ? [`${element.tagName}.${element.className}${pseudo ?? ''}`] : [];
      }),
    ),
  );
