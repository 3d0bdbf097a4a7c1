import { describe, expect, test } from 'vitest';
import { languages } from '../../src/cli/tongue-files';
import { LANGUAGES, languageFor, loadLanguage } from '../../src/shell/language';
import { checkScreenWords } from '../../src/ui/words/words';

test('the page has the languages that there are folders for', () => {
  expect(LANGUAGES.map(({ code }) => code).toSorted()).toEqual(languages());
});

describe('which one', () => {
  test.each<readonly [chosen: string, preferred: readonly string[], code: string, why: string]>([
    ['fr', ['en-US'], 'fr', 'the one chosen'],
    ['', ['fr-CH', 'en'], 'fr', 'the first that the browser asks for'],
    ['', ['de-DE', 'fr'], 'fr', 'the first of them that there is'],
    ['', ['de'], 'en', 'the first there is'],
    ['zz', ['fr'], 'fr', 'what was chosen is there no more'],
  ])('%j with %j is %s: %s', (chosen, preferred, code) => {
    expect(languageFor(chosen, preferred).code).toBe(code);
  });
});

test.each(LANGUAGES)('$name comes whole: what the first paint needs, and the rest after it', async (profile) => {
  const { tongue, screen, rest } = await loadLanguage(profile);
  expect(tongue.profile).toBe(profile);
  expect(tongue.model.folder).toBe(profile.model);
  expect(tongue.model.phones.length).toBeGreaterThan(25);
  expect('setup-language' in screen).toBe(false);
  await rest();
  expect(checkScreenWords(screen)).toMatchObject({ ok: true });
});
