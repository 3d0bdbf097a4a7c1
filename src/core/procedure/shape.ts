import type { z } from 'zod';
import { type Finding, type FindingKey, type FindingSlots, finding, type Part, part } from './finding';
import type { Path } from './issue';

type ZodIssue = z.core.$ZodIssue;

/** `onKey`: the fault is in the key itself, not in what stands behind it. */
export type ShapeFault = {
  readonly finding: Finding;
  readonly at: Path;
  readonly given: string;
  readonly onKey: boolean;
};

/** How the schema writes "not blank"; any other text pattern in it is that of an id. */
const NOT_BLANK = String(/\S/);
const LANGUAGE_CODE = String(/^[a-z]{2,3}$/);

/** Puts the schema library's findings into ours. `value` is the whole document, to tell "missing" from "wrong". */
export function shapeFaults(issues: readonly ZodIssue[], value: unknown, above: Path = []): readonly ShapeFault[] {
  return issues.flatMap((issue) => faultsOf(issue, [...above, ...issue.path.filter(isPart)], value));
}

function faultsOf(issue: ZodIssue, at: Path, value: unknown): readonly ShapeFault[] {
  const name = at.length === 0 ? part('document') : part('key', { key: String(at.at(-1)) });
  const given = show(lookUp(value, at));
  const one = <K extends FindingKey>(key: K, slots: FindingSlots<K>, onKey = false): readonly ShapeFault[] => [
    { finding: finding(key, slots), at, given: onKey ? String(at.at(-1)) : given, onKey },
  ];
  switch (issue.code) {
    case 'invalid_type':
      return typeFault(issue.expected, at, name, value);
    case 'unrecognized_keys':
      return issue.keys.map((key) => ({
        finding: finding(key.includes(' ') ? 'unknown-key.comma' : 'unknown-key', { key }),
        at: [...at, key],
        given: key,
        onKey: true,
      }));
    case 'invalid_value':
      if (lookUp(value, at) === undefined) return [missing(at, name)];
      return one('not-one-of', { name, values: listed(issue.values) });
    case 'invalid_union':
      if (issue.discriminator !== undefined)
        return one('not-one-of', {
          name,
          values: listed('options' in issue && Array.isArray(issue.options) ? issue.options : []),
        });
      return branchFaults(issue.errors, at, value) ?? one('wrong-type.unreadable', { name });
    case 'invalid_format':
      return 'pattern' in issue && issue.pattern === NOT_BLANK
        ? one('blank-text', { name })
        : 'pattern' in issue && issue.pattern === LANGUAGE_CODE
          ? one('bad-id.language', { name })
          : one('bad-id', { name });
    case 'invalid_key':
      return one('bad-id', { name }, true);
    case 'too_small':
      return SIZED.has(issue.origin)
        ? one('too-few', { name, least: String(issue.minimum) })
        : one(issue.inclusive ? 'out-of-range.least' : 'out-of-range.above', { name, least: String(issue.minimum) });
    case 'too_big':
      return SIZED.has(issue.origin)
        ? one('too-many', { name, most: String(issue.maximum) })
        : one('out-of-range', { name, most: String(issue.maximum) });
    default:
      return one('wrong-type.unreadable', { name });
  }
}

const SIZED = new Set(['string', 'array', 'set', 'map', 'file', 'record']);

const missing = (at: Path, name: Part): ShapeFault => ({
  finding: finding('missing-key', { name }),
  at,
  given: '',
  onKey: false,
});

const EXPECTED: ReadonlyMap<string, Part> = new Map([
  ['string', part('type-words')],
  ['number', part('type-number')],
  ['int', part('type-whole-number')],
  ['boolean', part('type-truth')],
  ['array', part('type-list')],
  ['tuple', part('type-list')],
  ['object', part('type-group')],
  ['record', part('type-group')],
]);

function typeFault(expected: string, at: Path, name: Part, value: unknown): readonly ShapeFault[] {
  const found = lookUp(value, at);
  if (found === undefined) return [missing(at, name)];
  const fault = { at, given: show(found), onKey: false };
  if (typeof found === 'number' && !Number.isFinite(found))
    return [{ ...fault, finding: finding('not-finite', { name }) }];
  const key = expected === 'string' && typeof found === 'number' ? 'wrong-type.quantity' : 'wrong-type';
  return [{ ...fault, finding: finding(key, { name, expected: EXPECTED.get(expected) ?? expected }) }];
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
const listed = (values: readonly unknown[]): readonly string[] => values.filter((v) => v !== undefined).map(String);
const isPart = (part: PropertyKey): part is string | number => typeof part !== 'symbol';
