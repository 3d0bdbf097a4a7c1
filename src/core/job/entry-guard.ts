import { dimensionOf, isUnitName } from '../fastening/unit';
import type { Entry as Sealed, StoredEntry } from '../log/envelope';
import { assertNever } from '../result';
import type { Entry, EntryBody } from './entry';
import { BODIES, type Form, QUESTIONS, WRENCH } from './entry-forms';
import type { Plan } from './plan';

/** A whole procedure fits; nothing that would only fill the memory does. */
const LONGEST_TEXT = 2_000_000;
const LONGEST_WAIT_MS = 366 * 86_400_000;

function fits(form: Form, value: unknown): boolean {
  switch (form.is) {
    case 'text':
      return isText(value);
    case 'flag':
      return typeof value === 'boolean';
    case 'number':
      return isNumber(value);
    case 'positive':
      return isNumber(value) && value > 0;
    case 'count':
      return Number.isSafeInteger(value) && Number(value) >= 1;
    case 'score':
      return isNumber(value) && value >= 0 && value <= 1;
    case 'wait':
      return isNumber(value) && value >= 0 && value <= LONGEST_WAIT_MS;
    case 'unit':
      return isText(value) && isUnitName(value);
    case 'torque-unit':
      return isText(value) && isUnitName(value) && dimensionOf(value) === 'torque';
    case 'day':
      return isText(value) && /^\d{4}-\d{2}-\d{2}$/.test(value);
    case 'one-of':
      return isText(value) && form.values.includes(value);
    case 'or-null':
      return value === null || fits(form.of, value);
    case 'maybe':
      return value === undefined || fits(form.of, value);
    case 'list':
      return Array.isArray(value) && value.every((item) => fits(form.of, item));
    case 'wrench':
      return typeof value === 'object' && value !== null && fitsAll(WRENCH, value);
    case 'question':
      return fitsOne(QUESTIONS, value);
    default:
      return assertNever(form);
  }
}

const isText = (value: unknown): value is string => typeof value === 'string' && value.length <= LONGEST_TEXT;
const isNumber = (value: unknown): value is number => Number.isFinite(value);

/** The fields of every kind of entry and of every question in one: what a version of the log is. */
export const fieldsOfLog = (): Readonly<Record<string, readonly string[]>> => ({
  ...fieldsOf(BODIES, ''),
  ...fieldsOf(QUESTIONS, 'asked/'),
  wrench: Object.keys(WRENCH).sort(),
});

const fieldsOf = (shapes: Readonly<Record<string, object>>, before: string) =>
  Object.fromEntries(Object.entries(shapes).map(([kind, fields]) => [before + kind, Object.keys(fields).sort()]));

/** Looks at every field of an entry: what a file from outside must pass before it is folded into a job. */
export const isEntryBody = (entry: StoredEntry): entry is StoredEntry & Sealed<EntryBody> => fitsOne(BODIES, entry);

function fitsOne(shapes: Readonly<Record<string, Readonly<Record<string, Form>>>>, value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return false;
  const given: ReadonlyMap<string, unknown> = new Map(Object.entries(value));
  const kind = given.get('kind');
  if (typeof kind !== 'string' || !Object.hasOwn(shapes, kind)) return false;
  return fitsAll(shapes[kind] ?? {}, value);
}

function fitsAll(shape: Readonly<Record<string, Form>>, value: object): boolean {
  const given: ReadonlyMap<string, unknown> = new Map(Object.entries(value));
  return Object.entries(shape).every(([field, form]) => fits(form, given.get(field)));
}

/** The first entry that speaks of a step, pass, bolt or earlier entry that is not there; the fold would throw on it. */
export const strayEntry = (plan: Plan, entries: readonly Entry[]): Entry | undefined =>
  entries.find((entry) => !isAtHome(plan, entry));

function isAtHome(plan: Plan, entry: Entry): boolean {
  if (entry.kind === 'undone') return entry.target < entry.seq;
  const at = entry.kind === 'asked' ? entry.question : entry;
  if (!('step' in at)) return true;
  const planned = plan.steps.get(at.step);
  if (!planned) return false;
  if (!('pass' in at)) return true;
  const pass = planned.passes.find(({ id }) => id === at.pass);
  return pass !== undefined && (!('bolt' in at) || pass.order.includes(at.bolt));
}
