import { describe, expect, test } from 'vitest';
import { mendWords } from '../../../src/cli/mend-words';
import { checkReplies, type ReplyIssue } from '../../../src/core/phrasing/reply-book';
import { englishData } from './english';

function issuesOf(spoil: (data: Record<string, Record<string, unknown>>) => void): readonly ReplyIssue[] {
  const data = englishData();
  spoil(data);
  const book = checkReplies(data);
  return book.ok ? [] : book.error;
}

/** One section of the file, made if it is not there. */
const put = (section: string, key: string, value: unknown) => (data: Record<string, Record<string, unknown>>) => {
  data[section] = { ...data[section], [key]: value };
};

const dropReply = (code: string) => (data: Record<string, Record<string, unknown>>) => {
  delete data.replies?.[code];
};

describe('a spoilt file', () => {
  test.each<[string, (data: Record<string, Record<string, unknown>>) => void, Partial<ReplyIssue>]>([
    ['a code without words', dropReply('stopped'), { code: 'missing-reply', at: 'replies', given: 'stopped' }],
    ['words without a code', put('replies', 'stoped', 'X.'), { code: 'unknown-reply', at: 'replies.stoped' }],
    [
      'a place that is no slot',
      put('replies', 'bolt-done', '{bolt} {x}.'),
      { code: 'unknown-slot', at: 'replies.bolt-done', given: 'x' },
    ],
    [
      'a slot left out',
      put('replies', 'bolt-done', 'Done.'),
      { code: 'unused-slot', at: 'replies.bolt-done', given: 'bolt' },
    ],
    [
      'a slot left out of what is shown',
      put('replies', 'bolt-done', { say: '{bolt}.', show: 'X.' }),
      { code: 'unused-slot', at: 'replies.bolt-done.show' },
    ],
    [
      'an unused slot that there is not',
      put('replies', 'stopped', { say: 'X.', unused: ['bolt'] }),
      { code: 'unknown-slot', given: 'bolt' },
    ],
    ['a bracket left open', put('replies', 'stopped', 'X[, y.'), { code: 'bad-template', at: 'replies.stopped' }],
    ['a bracket in a bracket', put('replies', 'stopped', 'X[, [y]].'), { code: 'bad-template' }],
    ['a brace left open', put('replies', 'bolt-done', '{bolt done.'), { code: 'bad-template' }],
    ['half a noun', put('replies', 'bolt-done', '{bolt bolt}.'), { code: 'bad-template' }],
    ['figures to be spoken', put('replies', 'stopped', 'Wait 5 s.'), { code: 'not-speakable', given: '5' }],
    ['no words at all', put('replies', 'stopped', ''), { code: 'blank-text', at: 'replies.stopped' }],
    ['a number for words', put('replies', 'stopped', 7), { code: 'wrong-type', at: 'replies.stopped', given: '7' }],
    ['a key that is none', put('clock', 'quarter', 'x'), { code: 'unknown-key', at: 'clock.quarter' }],
    ['a unit without a word', put('units', 'mm', undefined), { code: 'wrong-type', at: 'units.mm' }],
    [
      'too few number words',
      put('numbers', 'digits', ['zero']),
      { code: 'wrong-count', at: 'numbers.digits', given: '1' },
    ],
    [
      'a scale below a hundred',
      put('numbers', 'scales', [{ worth: 10, one: 'a', many: '{n} b', joint: ' ' }]),
      { code: 'wrong-count', at: 'numbers.scales.0.worth' },
    ],
    ['a template without its place', put('clock', 'full', 'o’clock'), { code: 'unused-slot', at: 'clock.full' }],
    [
      'a denominator that is no number',
      put('fractions', 'bottoms', { half: 'x' }),
      { code: 'unknown-key', given: 'half' },
    ],
    ['a list for a mapping', put('fractions', 'bottoms', []), { code: 'wrong-type', at: 'fractions.bottoms' }],
  ])('%s', (_, spoil, issue) => {
    expect(issuesOf(spoil)).toEqual(expect.arrayContaining([expect.objectContaining(issue)]));
  });

  test('every fault is found in one reading, each with how to mend it', () => {
    const issues = issuesOf((data) => {
      dropReply('stopped')(data);
      put('replies', 'bolt-done', 'Done.')(data);
      put('lists', 'between', 3)(data);
    });
    expect(issues).toHaveLength(3);
    for (const issue of issues) expect(mendWords(issue.mend)).toMatch(/\.$/);
  });

  test.each([[null], [undefined], ['text'], [[]], [7]])('%j is no file of replies, and says so', (raw) => {
    const book = checkReplies(raw);
    expect(book.ok ? [] : book.error.map((issue) => issue.code)).toContain('wrong-type');
  });
});
