import { dimensionOf, isUnitName } from '../fastening/unit';
import type { Entry as Sealed, StoredEntry } from '../log/envelope';
import { MILESTONES, RECOVERY_ACTIONS } from '../procedure/procedure';
import type { ChosenWrench } from './chosen-wrench';
import type { Entry, EntryBody } from './entry';
import type { Pending } from './pending';
import type { Plan } from './plan';

type Fits = (value: unknown) => boolean;
/** Every field of a body beside its kind, so that the compiler misses none that is added. */
type Fields<B> = B extends { readonly kind: string } ? { readonly [F in Exclude<keyof B, 'kind'>]: Fits } : never;
type Shapes<U extends { readonly kind: string }> = {
  readonly [K in U['kind']]: Fields<Extract<U, { readonly kind: K }>>;
};

/** A whole procedure fits; nothing that would only fill the memory does. */
const LONGEST_TEXT = 2_000_000;
const LONGEST_WAIT_MS = 366 * 86_400_000;

const isText: Fits = (v) => typeof v === 'string' && v.length <= LONGEST_TEXT;
const isFlag: Fits = (v) => typeof v === 'boolean';
const isNumber: Fits = (v) => Number.isFinite(v);
const isCount: Fits = (v) => Number.isSafeInteger(v) && Number(v) >= 1;
const isUnit: Fits = (v) => typeof v === 'string' && isUnitName(v);
const isWait: Fits = (v) => isNumber(v) && Number(v) >= 0 && Number(v) <= LONGEST_WAIT_MS;
const isScore: Fits = (v) => isNumber(v) && Number(v) >= 0 && Number(v) <= 1;
const oneOf =
  (...values: readonly unknown[]): Fits =>
  (v) =>
    values.includes(v);
const orNull =
  (fits: Fits): Fits =>
  (v) =>
    v === null || fits(v);

/** What older logs did not tell. */
const maybe =
  (fits: Fits): Fits =>
  (v) =>
    v === undefined || fits(v);

const inPass = { step: isText, pass: isText };
const atBolt = { ...inPass, bolt: isCount };

const isPositive: Fits = (v) => isNumber(v) && Number(v) > 0;

const WRENCH: { readonly [F in keyof ChosenWrench]: Fits } = {
  id: isText,
  say: isText,
  unit: (v) => typeof v === 'string' && isUnitName(v) && dimensionOf(v) === 'torque',
  least: isNumber,
  most: isPositive,
  graduation: isPositive,
  lever: orNull(isPositive),
  calibrationDue: orNull((v) => typeof v === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(v)),
};

const isWrench: Fits = (v) => typeof v === 'object' && v !== null && fitsAll(WRENCH, v);

const QUESTIONS: Shapes<Pending> = {
  'skip-step': { step: isText },
  'sign-off': { end: isText, reason: isText },
  'override-order': inPass,
  'repeat-pass': inPass,
  'slacken-all': { step: isText },
  reading: { step: isText, reading: isText, value: isNumber, unit: isUnit },
  adapter: { millimetres: orNull(isNumber), degrees: isNumber },
  'which-bolt': inPass,
  'out-of-order': atBolt,
  'held-bolt': { ...atBolt, as: oneOf('done', 'open') },
  mark: { ...atBolt, clock: isNumber },
  floor: { ...atBolt, value: isNumber, unit: maybe(isUnit) },
  marks: { ...inPass, leaving: oneOf('knock-off', 'hand-over') },
  'turned-or-not': atBolt,
  'close-job': {},
  'hand-over': {},
};

const BODIES: Shapes<EntryBody> = {
  'job-started': {
    job: isText,
    procedure: isText,
    text: isText,
    textHash: isText,
    machine: isText,
    people: (v) => Array.isArray(v) && v.every(isText),
  },
  'session-opened': {},
  'wrench-chosen': { tool: isText, wrench: isWrench },
  'wrenches-owned': { wrenches: (v) => Array.isArray(v) && v.every(isWrench) },
  'time-given': { step: isText },
  'terse-set': { terse: isFlag },
  paused: { why: oneOf('held', 'knocked-off') },
  'came-back': {},
  'step-done': { step: isText },
  'step-skipped': { step: isText },
  'question-answered': { step: isText, answer: isText, right: isFlag },
  'setting-confirmed': { ...inPass, value: isNumber, unit: isUnit },
  'heads-marked': inPass,
  'bolt-done': { ...atBolt, inOrder: isFlag },
  'bolt-turned': { ...atBolt, degrees: isNumber },
  'torque-read': { ...atBolt, value: isNumber, unit: isUnit, over: isFlag },
  'bolt-fault': {
    ...atBolt,
    fault: oneOf(
      'clicked-early',
      'felt-soft',
      'went-past',
      'snapped',
      'pulled-through',
      'under-after-angle',
      'clicked-twice',
    ),
    action: oneOf(...RECOVERY_ACTIONS, 'hold', 'note'),
  },
  'bolt-unknown': { ...atBolt, why: oneOf('not-sure', 'interrupted', 'taken-back') },
  'bolt-proved': { ...atBolt, verdict: oneOf('done', 'open'), clock: orNull(isNumber) },
  'swing-proved': { ...atBolt, degrees: isNumber, clock: orNull(isNumber) },
  'bolt-replaced': { ...atBolt, action: oneOf(...RECOVERY_ACTIONS, 'hold') },
  'bolt-settled': { ...atBolt, as: oneOf('done', 'open') },
  'marks-read': inPass,
  'order-broken': inPass,
  'order-accepted': { ...inPass, override: isFlag },
  'pass-repeated': inPass,
  'pass-waited': inPass,
  'all-slackened': { step: isText },
  measured: { step: isText, reading: isText, value: isNumber, unit: isUnit, within: orNull(isFlag) },
  'end-opened': { end: isText, what: isText, blocks: oneOf(...MILESTONES), why: oneOf('dropped', 'came-off') },
  'end-closed': { end: isText, how: oneOf('refitted', 'found', 'signed-off'), reason: isText },
  'timer-started': { timer: isText, ms: isWait },
  asked: { question: (v) => fitsOne(QUESTIONS, v) },
  'question-dropped': {},
  'adapter-on': { millimetres: isNumber, degrees: isNumber },
  'adapter-off': {},
  'wrench-dropped': { tool: isText },
  listed: { part: isText },
  'checked-by': { person: isText, step: isText },
  noted: { blob: isText, step: isText },
  pictured: { blob: isText, step: isText },
  undone: { target: isCount },
  'handed-over': {},
  closed: {},
  heard: { words: isText, score: isScore, by: oneOf('voice', 'touch', 'typed'), command: isText },
  rejected: { words: isText, score: isNumber, why: isText },
  said: { code: isText, text: isText },
};

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

function fitsOne(shapes: Readonly<Record<string, Readonly<Record<string, Fits>>>>, value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return false;
  const given: ReadonlyMap<string, unknown> = new Map(Object.entries(value));
  const kind = given.get('kind');
  if (typeof kind !== 'string' || !Object.hasOwn(shapes, kind)) return false;
  return fitsAll(shapes[kind] ?? {}, value);
}

function fitsAll(shape: Readonly<Record<string, Fits>>, value: object): boolean {
  const given: ReadonlyMap<string, unknown> = new Map(Object.entries(value));
  return Object.entries(shape).every(([field, fits]) => fits(given.get(field)));
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
