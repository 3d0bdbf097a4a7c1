import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { languages, readTongue } from '../../../src/cli/tongue-files';
import { phrase } from '../../../src/core/phrasing/phrase';
import { bolts, REPLY_CODES, type ReplyCode, type Said, text } from '../../../src/core/phrasing/reply';
import { secondsToSay } from '../../../src/core/phrasing/speaking-time';
import { wordsOfTemplate } from '../../../src/core/phrasing/template';
import { sampleOf } from './sample-slots';

/** Names that go into other lines, and the values of the Bench. */
const isName = (code: ReplyCode) =>
  /^(milestone-(turn|crank|fuel|first|hand)|end-named|end-dropped|end-wrench|way-|reason|fault-(clicked|felt|went|snapped|pulled|under)|shown)/.test(
    code,
  );

describe.each(languages().map((code) => ({ code, tongue: readTongue(code) })))(
  'every reply of $code',
  ({ code: language, tongue }) => {
    const book = tongue.replies;
    const spoken = (code: ReplyCode, slots?: Record<string, Said>) => phrase(book, sampleOf(code, slots)).spoken;
    const shown = (code: ReplyCode, slots?: Record<string, Said>) => phrase(book, sampleOf(code, slots)).shown;

    test.each(REPLY_CODES.filter((code) => !isName(code)))('%s is a sentence a voice can read', (code) => {
      expect(spoken(code)).toMatch(/^\p{Lu}[\p{L} .,;:?!']*[.?!]$/u);
      expect(spoken(code)).not.toMatch(/ [.,;:?!]|[.,;:?!]{2}| {2}/);
      expect(shown(code)).toMatch(/^[\p{Lu}\d].*[.?!](?:”|\u00a0»)?$/u);
      expect(shown(code)).not.toMatch(/[{}[\]|]/);
    });

    test.each(REPLY_CODES.filter(isName))('%s is a name without a stop', (code) => {
      expect(spoken(code)).toMatch(/^[\p{L} ,']+$/u);
      expect(shown(code)).toMatch(/[^.?!{}[\]|]$/);
    });

    /** What a document may leave out, or a job may not have. */
    const absent: Partial<Record<ReplyCode | 'all', Record<string, Said>>> = {
      all: { where: text(''), words: text(''), tool: text(''), turned: text('') },
      'order-to-settle': { bolts: bolts([]) },
      'remaining-steps': { phase: text('') },
    };

    test.each(REPLY_CODES)('%s leaves no gap where the document gives nothing', (code) => {
      const bare = phrase(book, sampleOf(code, { ...absent.all, ...absent[code] }));
      for (const words of [bare.spoken, bare.shown]) expect(words).not.toMatch(/ [.,;:?!]|,[.?!]|[.:;,]{2}| {2}|^[.,]/);
    });

    // A sentence is never cut by a listening gap: those come at its end.
    test.each(REPLY_CODES)('%s has no sentence of more than four seconds beside what the document says', (code) => {
      const longest = {
        text: text('A.'),
        step: text('A.'),
        question: text('A?'),
        advice: text('A.'),
        machine: text('A'),
      };
      for (const sentence of spoken(code, { ...longest, bolts: sampleOf('whole-pass').slots.bolts ?? text('') }).split(
        /(?<=[.?!]) /,
      ))
        expect(secondsToSay(sentence), sentence).toBeLessThan(4);
    });

    describe('words to be said back', () => {
      const grammar = readFileSync(new URL(`../../../grammars/${language}/commands.jsgf`, import.meta.url), 'utf8');
      const alternatives = [...grammar.matchAll(/^public <[^>]+>\s*=([^;]*);/gm)].flatMap(([, body = '']) =>
        body.split('|').map((alternative) => alternative.trim()),
      );
      const taught = new Set(
        Object.values(book.replies).flatMap(({ say, show }) =>
          [...say, ...show].flatMap((part) =>
            wordsOfTemplate([part]).flatMap((words) => words.match(/[“«][^”»{]+[”»]/g) ?? []),
          ),
        ),
      );

      test.each([...taught])('%s begins a command of the grammar', (quoted) => {
        const said = quoted.slice(1, -1).trim().replaceAll('’', "'").toLowerCase();
        expect(alternatives.some((a) => a === said || a.startsWith(`${said} <`))).toBe(true);
      });

      test('there are some', () => {
        expect(taught.size).toBeGreaterThan(8);
      });
    });
  },
);
