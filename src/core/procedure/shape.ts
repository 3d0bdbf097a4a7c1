import type { z } from 'zod';
import type { Finding, IssueCode, Path } from './issue';

type ZodIssue = z.core.$ZodIssue;

/** `onKey`: the fault is in the key itself, not in what stands behind it. */
export type ShapeFault = Finding & { readonly onKey: boolean };

/** How the schema writes "not blank"; any other text pattern in it is that of an id. */
const NOT_BLANK = String(/\S/);
const LANGUAGE_CODE = String(/^[a-z]{2,3}$/);
const MEND_LANGUAGE = 'Give its code in two or three small letters: that of a folder under grammars.';
const MEND_ID = 'Use small letters, digits and dashes, starting with a letter: head-bolts-left.';

/** Puts the schema library's findings into our words. `value` is the whole document, to tell "missing" from "wrong". */
export function shapeFaults(issues: readonly ZodIssue[], value: unknown, above: Path = []): readonly ShapeFault[] {
  return issues.flatMap((issue) => faultsOf(issue, [...above, ...issue.path.filter(isPart)], value));
}

function faultsOf(issue: ZodIssue, at: Path, value: unknown): readonly ShapeFault[] {
  const name = at.length === 0 ? 'The document' : `"${at.at(-1)}"`;
  const given = show(lookUp(value, at));
  const one = (code: IssueCode, message: string, mend: string, onKey = false): readonly ShapeFault[] => [
    { code, at, given: onKey ? String(at.at(-1)) : given, message, mend, onKey },
  ];
  switch (issue.code) {
    case 'invalid_type':
      return typeFault(issue.expected, at, name, value);
    case 'unrecognized_keys':
      return issue.keys.map((key) => ({
        code: 'unknown-key' as const,
        at: [...at, key],
        given: key,
        message: `"${key}" means nothing here.`,
        mend: key.includes(' ') ? MEND_COMMA : 'Check its spelling and its indent, or delete it.',
        onKey: true,
      }));
    case 'invalid_value':
      if (lookUp(value, at) === undefined) return [missing(at, name)];
      return one('not-one-of', `${name} must be ${oneOf(issue.values)}.`, 'Choose one of them.');
    case 'invalid_union':
      if (issue.discriminator !== undefined)
        return one(
          'not-one-of',
          `${name} must be ${oneOf('options' in issue && Array.isArray(issue.options) ? issue.options : [])}.`,
          'Choose one of them.',
        );
      return (
        branchFaults(issue.errors, at, value) ?? one('wrong-type', `${name} cannot be read as it stands.`, MEND_TYPE)
      );
    case 'invalid_format':
      return 'pattern' in issue && issue.pattern === NOT_BLANK
        ? one('blank-text', `${name} has no words.`, 'Write what is to be said, or delete the line.')
        : 'pattern' in issue && issue.pattern === LANGUAGE_CODE
          ? one('bad-id', `${name} is not the code of a language.`, MEND_LANGUAGE)
          : one('bad-id', `${name} is not written as a name must be.`, MEND_ID);
    case 'invalid_key':
      return one('bad-id', `${name} is not written as a name must be.`, MEND_ID, true);
    case 'too_small':
      return SIZED.has(issue.origin)
        ? one('too-few', `${name} has too little in it.`, `Give at least ${issue.minimum}.`)
        : one('out-of-range', `${name} is too small.`, `Give ${issue.inclusive ? '' : 'more than '}${issue.minimum}.`);
    case 'too_big':
      return SIZED.has(issue.origin)
        ? one('too-many', `${name} is too long.`, `Keep it to ${issue.maximum}.`)
        : one('out-of-range', `${name} is too large.`, `Give at most ${issue.maximum}.`);
    default:
      return one('wrong-type', `${name} cannot be read as it stands.`, MEND_TYPE);
  }
}

const MEND_COMMA = 'Between { and } a text with a comma needs quotes round it.';
const MEND_TYPE = 'Compare it with procedure.schema.json or with one of the shipped documents.';
const SIZED = new Set(['string', 'array', 'set', 'map', 'file', 'record']);

const missing = (at: Path, name: string): ShapeFault => ({
  code: 'missing-key',
  at,
  given: '',
  message: `${name} is missing.`,
  mend: `Add ${name} here.`,
  onKey: false,
});

const EXPECTED: ReadonlyMap<string, string> = new Map([
  ['string', 'words'],
  ['number', 'a number'],
  ['int', 'a whole number'],
  ['boolean', 'true or false'],
  ['array', 'a list'],
  ['tuple', 'a list'],
  ['object', 'a group of "key: value" lines'],
  ['record', 'a group of "key: value" lines'],
]);

function typeFault(expected: string, at: Path, name: string, value: unknown): readonly ShapeFault[] {
  const found = lookUp(value, at);
  if (found === undefined) return [missing(at, name)];
  const fault = { at, given: show(found), onKey: false };
  if (typeof found === 'number' && !Number.isFinite(found))
    return [
      { ...fault, code: 'not-finite', message: `${name} is not a finite number.`, mend: 'Write the number out.' },
    ];
  const mend =
    expected === 'string' && typeof found === 'number'
      ? 'Put it in quotes, and give a quantity its unit.'
      : 'Compare it with a neighbouring entry.';
  return [{ ...fault, code: 'wrong-type', message: `${name} must be ${EXPECTED.get(expected) ?? expected}.`, mend }];
}

/** Of several shapes a value may have, the one it was meant to have is the one whose outermost type fits. */
function branchFaults(
  branches: readonly (readonly ZodIssue[])[],
  at: Path,
  value: unknown,
): readonly ShapeFault[] | null {
  const meant = branches.find(
    (issues) => !issues.some(({ code, path }) => code === 'invalid_type' && path.length === 0),
  );
  return meant === undefined ? null : shapeFaults(meant, value, at);
}

function lookUp(value: unknown, at: Path): unknown {
  return at.reduce<unknown>(
    // A plain record view of whatever the YAML held; missing keys are undefined.
    (held, part) => (typeof held === 'object' && held !== null ? (held as Record<string, unknown>)[part] : undefined),
    value,
  );
}

const show = (value: unknown): string =>
  (typeof value === 'string' ? value : (JSON.stringify(value) ?? '')).slice(0, 60);
const oneOf = (values: readonly unknown[]): string => `one of ${values.filter((v) => v !== undefined).join(', ')}`;
const isPart = (part: PropertyKey): part is string | number => typeof part !== 'symbol';
