import { describe, expect, test } from 'vitest';
import { ruleBook } from '../../../src/core/language/rule-book';
import { english } from '../../grammars/en/english';

const head = (name: string): string => `#JSGF V1.0;\ngrammar ${name};\n`;
const commands = (body: string) => ({ file: 'commands.jsgf', text: head('c') + body });
const numbers = { file: 'numbers.jsgf', text: `${head('n')}public <number> = <one>;\n<one> = one {1};` };

describe('grammar files that do not fit together', () => {
  test.each<readonly [name: string, body: string, code: string, given: string, line: number]>([
    ['a rule nobody defines', 'public <a> = <b>;', 'undefined-rule', 'b', 3],
    ['a private rule of another file', 'import <n.*>;\npublic <a> = <one>;', 'undefined-rule', 'one', 4],
    ['a public rule without its import', 'public <a> = <number>;', 'undefined-rule', 'number', 3],
    ['an import of nothing', 'import <m.*>;\npublic <a> = b;', 'unknown-import', 'm.*', 1],
    ['a slot in a part', 'public <a> = <b>;\n<b> = bolt <bolt>;', 'undefined-rule', 'bolt', 4],
    ['two rules of one name', 'public <a> = b;\npublic <a> = c;', 'duplicate-rule', 'a', 4],
    ['a rule that begins with itself', 'public <a> = <b>;\n<b> = <b> c | c;', 'left-recursion', 'b', 4],
    ['a rule that can begin with itself', '<b> = [x] <d>;\n<d> = <b> y;', 'left-recursion', 'b', 3],
    ['a rule that comes back to itself', 'public <a> = b <c>;\n<c> = d [<c>];', 'recursion', 'c', 4],
    ['a tag without a meaning', 'public <a> = b {hello};', 'bad-tag', 'hello', 3],
    ['a slot mark, which only the state sets', 'public <a> = b {@bolt};', 'bad-tag', '@bolt', 3],
    ['a name on the last of several words', '<a> = waiting for a part {=part};', 'bad-tag', '=part', 3],
    ['a text that cannot be read', 'public <a> = (b;', 'unexpected', ';', 3],
  ])('%s', (_name, body, code, given, line) => {
    const book = ruleBook([commands(body), numbers]);
    expect(book.ok ? [] : book.error).toContainEqual(
      expect.objectContaining({ file: 'commands.jsgf', code, given, line }),
    );
  });

  test('the issues of all files come together', () => {
    const book = ruleBook([commands('<a> = ;'), { file: 'other.jsgf', text: 'no header' }]);
    expect(book.ok ? [] : [...new Set(book.error.map(({ file }) => file))]).toEqual(['commands.jsgf', 'other.jsgf']);
  });
});

test('the public rules of the first file are the commands, and a slot may have the name of its rule', () => {
  const book = ruleBook([commands('import <n.*>;\npublic <answer> = it reads <answer>;\n<p> = <number>;'), numbers]);
  expect(book.ok ? book.value.publicRules : book.error).toEqual(['answer']);
});

test('English has no rule that is never used', () => {
  const text = JSON.stringify([...english.rules.values()]);
  const used = (name: string): boolean => text.includes(`{"kind":"rule","name":"${name}"}`);
  expect([...english.rules.keys()].filter((name) => !english.publicRules.includes(name) && !used(name))).toEqual([
    'number',
  ]);
});
