import { expect, test } from 'vitest';
import { LANGUAGES } from '../../src/shell/language';
import { Library } from '../../src/shell/library';
import { broken } from '../core/procedure/sound-document';

const nowhere = {
  setting: async () => ({ ok: true, value: null }) as const,
  saveSetting: async () => ({ ok: true, value: undefined }) as const,
};

test.each(LANGUAGES)('what is wrong with a document brought along is told in $name', async ({ code }) => {
  const library = new Library(code, nowhere, [], () => undefined);
  const { outcome, shelved } = await library.bring(broken('tool: bar', 'tool: barr'), 'own.yaml');
  expect(outcome).toBe('not-usable');
  const [issue] = shelved.issues;
  expect(issue).toMatchObject({ code: 'unknown-tool', given: 'barr' });
  expect([issue?.message, issue?.mend]).toEqual(TOLD[code]);
});

/** Of each language there is: who adds one adds what it says. */
const TOLD: Readonly<Record<string, readonly [wrong: string, mend: string]>> = {
  en: ['There is no "barr" under "tools:".', 'Did you mean "bar"?'],
  fr: ['Il n’y a pas de «\u00a0barr\u00a0» sous «\u00a0tools:\u00a0».', 'Est-ce «\u00a0bar\u00a0»\u00a0?'],
};
