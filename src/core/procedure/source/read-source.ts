import { Composer, type Document, isAlias, isMap, isScalar, LineCounter, Parser, visit, type YAMLError } from 'yaml';
import { type Finding, type FindingKey, type FindingSlots, finding, type PlainFinding } from '../finding';
import type { Path } from '../issue';
import { hiddenCharacter } from './characters';
import { depthOf } from './depth';
import { locator, type Position } from './locate';

/** Longer than any procedure one person could follow, short enough to be checked in a blink. */
const MOST_CHARACTERS = 400_000;
const MOST_DEPTH = 24;

/** Names that objects already carry; as an id they would find something nobody wrote. */
const RESERVED = new Set([...Object.getOwnPropertyNames(Object.prototype), 'prototype']);

type SourceFault = { readonly finding: Finding; readonly position: Position; readonly given: string };

type Add = <K extends FindingKey>(key: K, offset: number, given: string, slots: FindingSlots<K>) => void;

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
  const refuse = (found: Finding, given: string): Source => ({
    value: undefined,
    faults: [{ finding: found, position: top, given }],
    locate: () => top,
  });
  if (text.length > MOST_CHARACTERS)
    return refuse(finding('too-large', { most: MOST_CHARACTERS }), String(text.length));

  const tokens = [...new Parser(lines.addNewLine).parse(text)];
  if (tokens.some((token) => depthOf(token) > MOST_DEPTH)) return refuse(finding('too-deep', { most: MOST_DEPTH }), '');

  const composer = new Composer({
    lineCounter: lines,
    uniqueKeys: false,
    stringKeys: true,
    merge: false,
    schema: 'core',
  });
  const documents = [...composer.compose(tokens, true, text.length)];
  const first = documents[0];
  if (first === undefined) return refuse(finding('yaml-syntax.empty', {}), '');

  const position = (offset: number): Position => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(line, 1), column: Math.max(col, 1) };
  };
  const faults: SourceFault[] = [];
  const add: Add = (key, offset, given, slots) => {
    faults.push({ finding: finding(key, slots), position: position(offset), given });
  };

  const hidden = hiddenCharacter(text.startsWith('\ufeff') ? ` ${text.slice(1)}` : text);
  if (hidden !== null) add('control-character', hidden.offset, hidden.name, { name: hidden.name });
  const second = documents[1];
  if (second !== undefined) add('several-documents', second.range[0], '---', {});
  for (const error of [...first.errors, ...first.warnings])
    add(SYNTAX[error.code] ?? 'yaml-syntax', error.pos[0], excerpt(text, error.pos[0]), {});
  inspect(first, add);
  return { value: faults.length > 0 ? undefined : first.toJS(), faults, locate: locator(first, position) };
}

/** What the parser tells apart and a person can act on; everything else is told as bad syntax. */
const SYNTAX: Readonly<Partial<Record<YAMLError['code'], PlainFinding>>> = {
  TAG_RESOLVE_FAILED: 'yaml-tag',
  BAD_INDENT: 'yaml-syntax.indent',
  TAB_AS_INDENT: 'yaml-syntax.tab',
  MISSING_CHAR: 'yaml-syntax.missing',
  BAD_DQ_ESCAPE: 'yaml-syntax.escape',
  BAD_SCALAR_START: 'yaml-syntax.start',
  BLOCK_IN_FLOW: 'yaml-syntax.block',
  BLOCK_AS_IMPLICIT_KEY: 'yaml-syntax.key',
  MULTILINE_IMPLICIT_KEY: 'yaml-syntax.key',
  UNEXPECTED_TOKEN: 'yaml-syntax.token',
};

/** Faults that are good YAML and still have no place in a procedure. */
function inspect(document: Document, add: Add): void {
  visit(document, (_key, node) => {
    if (isAlias(node)) {
      add('alias', node.range?.[0] ?? 0, `*${node.source}`, {});
      return visit.SKIP;
    }
    if (isScalar(node) && typeof node.value === 'string') {
      const hidden = hiddenCharacter(node.value);
      if (hidden !== null) add('control-character', node.range?.[0] ?? 0, hidden.name, { name: hidden.name });
    }
    if (isMap(node)) {
      const seen = new Set<string>();
      for (const { key } of node.items) {
        const offset = isScalar(key) ? (key.range?.[0] ?? 0) : 0;
        const name = isScalar(key) ? String(key.value) : '';
        if (seen.has(name)) add('duplicate-key', offset, name, { name });
        if (RESERVED.has(name)) add('reserved-name', offset, name, { name });
        seen.add(name);
      }
    }
    return undefined;
  });
}

const excerpt = (text: string, offset: number): string => text.slice(offset, offset + 24).split('\n', 1)[0] ?? '';
