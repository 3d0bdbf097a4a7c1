import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds wrong with the page as it stands, by rule and place: WCAG 2.2, levels A, AA and AAA, and best practice. */
export async function findings(page: Page): Promise<readonly string[]> {
  // Given to the debugger, not to the page: the page's own policy allows no such script.
  await page.evaluate(axeSource);
  return page.evaluate(async () => {
    type Axe = {
      run: (o: object) => Promise<{ violations: { id: string; nodes: { target: unknown }[] }[] }>;
    };
    const axe = (window as unknown as { axe: Axe }).axe;
    const { violations } = await axe.run({
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'wcag2aaa', 'best-practice'],
    });
    return violations.flatMap((v) => v.nodes.map((n) => `${v.id} ${JSON.stringify(n.target)}`));
  });
}
