import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { earForNode } from '../../../src/cli/ear-host';
import { languages, readTongue } from '../../../src/cli/tongue-files';
import { wordsOfLine } from '../../../src/core/voice-profile/reading-aloud';
import { LINES_TO_READ } from '../../../src/shell/setup/setup-desk';
import { earLanguage } from '../../../src/speech/ear/ear-language';

/** Everything a shipped procedure says, by the words in it. */
const said: ReadonlySet<string> = new Set(
  readdirSync('procedures')
    .filter((name) => name.endsWith('.yaml'))
    .flatMap((name) => [...readFileSync(`procedures/${name}`, 'utf8').matchAll(/say: (.+?)(?: \}|, \w+:|$)/gm)])
    .map(([, text = '']) => wordsOfLine(text).join(' ')),
);

describe.each(languages())('the lines to read aloud in %s', (language) => {
  const texts: Readonly<Record<string, string>> = parse(readFileSync(`grammars/${language}/screen.yaml`, 'utf8'));
  const lines = LINES_TO_READ.map((key) => texts[key] ?? '');

  test('are real lines of a procedure, no two alike', () => {
    expect(lines.filter((line) => !said.has(wordsOfLine(line).join(' ')))).toEqual([]);
    expect(new Set(lines).size).toBe(lines.length);
  });

  test('have no word that the ear cannot pronounce', async () => {
    const ear = await earForNode(earLanguage(readTongue(language)));
    for (const line of lines) expect(await ear.read(wordsOfLine(line), () => undefined)).toMatchObject({ ok: true });
  }, 60_000);
});
