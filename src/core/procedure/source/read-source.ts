import { Composer, type Document, isAlias, isMap, isScalar, LineCounter, Parser, visit } from 'yaml';
import type { IssueCode, Path } from '../issue';
import { hiddenCharacter } from './characters';
import { depthOf } from './depth';
import { locator, type Position } from './locate';

/** Longer than any procedure one person could follow, short enough to be checked in a blink. */
const MOST_CHARACTERS = 400_000;
const MOST_DEPTH = 24;

/** Names that objects already carry; as an id they would find something nobody wrote. */
const RESERVED = new Set([...Object.getOwnPropertyNames(Object.prototype), 'prototype']);

type SourceFault = {
  readonly code: IssueCode;
  readonly position: Position;
  readonly given: string;
  readonly message: string;
  readonly mend: string;
};

export type Source = {
  readonly value: unknown;
  readonly faults: readonly SourceFault[];
  /** Where a path stands; a key that is not there is given the place of what should hold it. */
  readonly locate: (path: Path, onKey?: boolean) => Position;
};

/** Reads YAML into plain values with their places. Never throws; whatever could not be read is among the faults. */
export function readSource(text: string): Source {
  const lines = new LineCounter();
  const top = { line: 1, column: 1 };
  const refuse = (code: IssueCode, given: string, message: string, mend: string): Source => ({
    value: undefined,
    faults: [{ code, position: top, given, message, mend }],
    locate: () => top,
  });
  if (text.length > MOST_CHARACTERS)
    return refuse(
      'too-large',
      `${text.length} characters`,
      `The file is longer than ${MOST_CHARACTERS} characters.`,
      'Split the job into several procedures.',
    );

  const tokens = [...new Parser(lines.addNewLine).parse(text)];
  if (tokens.some((token) => depthOf(token) > MOST_DEPTH))
    return refuse(
      'too-deep',
      `more than ${MOST_DEPTH} levels`,
      'The file is nested too deeply to be a procedure.',
      'Look for a bracket that is never closed, or an indent that keeps growing.',
    );

  const composer = new Composer({
    lineCounter: lines,
    uniqueKeys: false,
    stringKeys: true,
    merge: false,
    schema: 'core',
  });
  const documents = [...composer.compose(tokens, true, text.length)];
  const first = documents[0];
  if (first === undefined) return refuse('yaml-syntax', '', 'The file is empty.', 'Start with "format: 1".');

  const position = (offset: number): Position => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(line, 1), column: Math.max(col, 1) };
  };
  const faults: SourceFault[] = [];
  const add = (code: IssueCode, offset: number, given: string, message: string, mend: string): void => {
    faults.push({ code, position: position(offset), given, message, mend });
  };

  const hidden = hiddenCharacter(text.startsWith('\ufeff') ? ` ${text.slice(1)}` : text);
  if (hidden !== null)
    add('control-character', hidden.offset, hidden.name, `Hidden character ${hidden.name}.`, 'Delete it.');
  const second = documents[1];
  if (second !== undefined)
    add('several-documents', second.range[0], '---', 'A second document starts here.', 'Keep one procedure in a file.');
  for (const error of [...first.errors, ...first.warnings])
    add(
      error.code === 'TAG_RESOLVE_FAILED' ? 'yaml-tag' : 'yaml-syntax',
      error.pos[0],
      excerpt(text, error.pos[0]),
      plain(error.message),
      MEND_SYNTAX,
    );
  inspect(first, add);
  return { value: faults.length > 0 ? undefined : first.toJS(), faults, locate: locator(first, position) };
}

const MEND_SYNTAX =
  'Check indents, colons and quotes here and on the line before. Inside { } a text with a comma or {side} needs quotes.';

/** Faults that are good YAML and still have no place in a procedure. */
function inspect(
  document: Document,
  add: (code: IssueCode, offset: number, given: string, message: string, mend: string) => void,
): void {
  visit(document, (_key, node) => {
    if (isAlias(node)) {
      add(
        'alias',
        node.range?.[0] ?? 0,
        `*${node.source}`,
        'Aliases are not read.',
        'Write the entry out, or use "for:".',
      );
      return visit.SKIP;
    }
    if (isScalar(node) && typeof node.value === 'string') {
      const hidden = hiddenCharacter(node.value);
      if (hidden !== null)
        add('control-character', node.range?.[0] ?? 0, hidden.name, `Hidden character ${hidden.name}.`, 'Delete it.');
    }
    if (isMap(node)) {
      const seen = new Set<string>();
      for (const { key } of node.items) {
        const offset = isScalar(key) ? (key.range?.[0] ?? 0) : 0;
        const name = isScalar(key) ? String(key.value) : '';
        if (seen.has(name))
          add(
            'duplicate-key',
            offset,
            name,
            `"${name}" is already given above.`,
            'Keep one of the two, or rename one.',
          );
        if (RESERVED.has(name))
          add('reserved-name', offset, name, `"${name}" cannot be used as a name.`, 'Choose another word.');
        seen.add(name);
      }
    }
    return undefined;
  });
}

const excerpt = (text: string, offset: number): string => text.slice(offset, offset + 24).split('\n', 1)[0] ?? '';

/** The parser's message without its place, which is given apart. */
const plain = (message: string): string => `${message.split('\n', 1)[0]?.replace(/[:.]?$/, '') ?? ''}.`;
