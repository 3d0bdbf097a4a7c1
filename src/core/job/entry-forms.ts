import { MILESTONES, RECOVERY_ACTIONS } from '../procedure/procedure';
import type { ChosenWrench } from './chosen-wrench';
import type { EntryBody } from './entry';
import type { Pending } from './pending';

/** What a field of an entry may hold, as data: the guard reads it, and so does the page that tells others of the log. */
export type Form =
  | {
      readonly is:
        | 'text'
        | 'flag'
        | 'number'
        | 'positive'
        /** Whole and at least 1. */
        | 'count'
        /** From 0 to 1. */
        | 'score'
        /** Milliseconds, at most a year. */
        | 'wait'
        | 'unit'
        | 'torque-unit'
        /** YYYY-MM-DD. */
        | 'day'
        | 'wrench'
        | 'question';
    }
  | { readonly is: 'one-of'; readonly values: readonly string[] }
  | { readonly is: 'or-null' | 'maybe' | 'list'; readonly of: Form };

/** Every field of a body beside its kind, so that the compiler misses none that is added. */
export type Fields<B> = B extends { readonly kind: string }
  ? { readonly [F in Exclude<keyof B, 'kind'>]: Form }
  : never;
export type Shapes<U extends { readonly kind: string }> = {
  readonly [K in U['kind']]: Fields<Extract<U, { readonly kind: K }>>;
};

const TEXT: Form = { is: 'text' };
const FLAG: Form = { is: 'flag' };
const NUMBER: Form = { is: 'number' };
const POSITIVE: Form = { is: 'positive' };
const COUNT: Form = { is: 'count' };
const SCORE: Form = { is: 'score' };
const WAIT: Form = { is: 'wait' };
const UNIT: Form = { is: 'unit' };
const oneOf = (...values: readonly string[]): Form => ({ is: 'one-of', values });
const orNull = (of: Form): Form => ({ is: 'or-null', of });
/** What older logs did not tell. */
const maybe = (of: Form): Form => ({ is: 'maybe', of });

const inPass = { step: TEXT, pass: TEXT };
const atBolt = { ...inPass, bolt: COUNT };

/** A wrench as an entry holds it. */
export const WRENCH: { readonly [F in keyof ChosenWrench]: Form } = {
  id: TEXT,
  say: TEXT,
  unit: { is: 'torque-unit' },
  least: NUMBER,
  most: POSITIVE,
  graduation: POSITIVE,
  lever: orNull(POSITIVE),
  calibrationDue: orNull({ is: 'day' }),
};

/** The questions that `asked` holds. */
export const QUESTIONS: Shapes<Pending> = {
  'skip-step': { step: TEXT },
  'sign-off': { end: TEXT, reason: TEXT },
  'override-order': inPass,
  'repeat-pass': inPass,
  'slacken-all': { step: TEXT },
  reading: { step: TEXT, reading: TEXT, value: NUMBER, unit: UNIT },
  adapter: { millimetres: orNull(NUMBER), degrees: NUMBER },
  'which-bolt': inPass,
  'out-of-order': atBolt,
  'held-bolt': { ...atBolt, as: oneOf('done', 'open') },
  mark: { ...atBolt, clock: NUMBER },
  floor: { ...atBolt, value: NUMBER, unit: maybe(UNIT) },
  marks: { ...inPass, leaving: oneOf('knock-off', 'hand-over') },
  'turned-or-not': atBolt,
  'close-job': {},
  'hand-over': {},
};

/** Every kind of entry with its fields beside `kind` and the envelope. */
export const BODIES: Shapes<EntryBody> = {
  'job-started': {
    job: TEXT,
    procedure: TEXT,
    text: TEXT,
    textHash: TEXT,
    machine: TEXT,
    people: { is: 'list', of: TEXT },
  },
  'session-opened': {},
  'wrench-chosen': { tool: TEXT, wrench: { is: 'wrench' } },
  'wrenches-owned': { wrenches: { is: 'list', of: { is: 'wrench' } } },
  'time-given': { step: TEXT },
  'terse-set': { terse: FLAG },
  paused: { why: oneOf('held', 'knocked-off') },
  'came-back': {},
  'step-done': { step: TEXT },
  'step-skipped': { step: TEXT },
  'question-answered': { step: TEXT, answer: TEXT, right: FLAG },
  'setting-confirmed': { ...inPass, value: NUMBER, unit: UNIT },
  'heads-marked': inPass,
  'bolt-done': { ...atBolt, inOrder: FLAG },
  'bolt-turned': { ...atBolt, degrees: NUMBER },
  'torque-read': { ...atBolt, value: NUMBER, unit: UNIT, over: FLAG },
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
  'bolt-proved': { ...atBolt, verdict: oneOf('done', 'open'), clock: orNull(NUMBER) },
  'swing-proved': { ...atBolt, degrees: NUMBER, clock: orNull(NUMBER) },
  'bolt-replaced': { ...atBolt, action: oneOf(...RECOVERY_ACTIONS, 'hold') },
  'bolt-settled': { ...atBolt, as: oneOf('done', 'open') },
  'marks-read': inPass,
  'order-broken': inPass,
  'order-accepted': { ...inPass, override: FLAG },
  'pass-repeated': inPass,
  'pass-waited': inPass,
  'all-slackened': { step: TEXT },
  measured: { step: TEXT, reading: TEXT, value: NUMBER, unit: UNIT, within: orNull(FLAG) },
  'end-opened': { end: TEXT, what: TEXT, blocks: oneOf(...MILESTONES), why: oneOf('dropped', 'came-off') },
  'end-closed': { end: TEXT, how: oneOf('refitted', 'found', 'signed-off'), reason: TEXT },
  'timer-started': { timer: TEXT, ms: WAIT },
  asked: { question: { is: 'question' } },
  'question-dropped': {},
  'adapter-on': { millimetres: NUMBER, degrees: NUMBER },
  'adapter-off': {},
  'wrench-dropped': { tool: TEXT },
  listed: { part: TEXT },
  'checked-by': { person: TEXT, step: TEXT },
  noted: { blob: TEXT, step: TEXT },
  pictured: { blob: TEXT, step: TEXT },
  undone: { target: COUNT },
  'handed-over': {},
  closed: {},
  heard: { words: TEXT, score: SCORE, by: oneOf('voice', 'touch', 'typed'), command: TEXT },
  rejected: { words: TEXT, score: NUMBER, why: TEXT },
  said: { code: TEXT, text: TEXT },
};
