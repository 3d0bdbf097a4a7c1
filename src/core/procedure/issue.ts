import type { UnitNames } from '../fastening/unit-spelling';
import type { Finding, FindingKey, FindingSlots } from './finding';

/** What can be wrong with a procedure document. Codes are stable and never used again for something else. */
export const ISSUE_CODES = [
  // the file
  'too-large',
  'too-deep',
  'control-character',
  'yaml-syntax',
  'duplicate-key',
  'alias',
  'yaml-tag',
  'several-documents',
  'reserved-name',
  // the shape
  'missing-key',
  'unknown-key',
  'wrong-type',
  'not-finite',
  'not-one-of',
  'too-few',
  'too-many',
  'out-of-range',
  'bad-id',
  'blank-text',
  // repeats
  'unequal-lists',
  'repeat-not-in-id',
  'unknown-placeholder',
  'too-many-steps',
  // ids and references
  'duplicate-id',
  'unknown-tool',
  'unknown-part',
  'unknown-pattern',
  'unknown-loose-end',
  'unknown-timer',
  'unknown-limit',
  'unknown-rule',
  'unknown-step',
  'unknown-pass',
  'unknown-answer',
  'unknown-group',
  'unknown-fastener',
  'never-used',
  'rule-missing',
  // quantities
  'bad-quantity',
  'bad-thread',
  'wrong-unit',
  'unit-pair-disagrees',
  'window-without-target',
  'window-missing',
  'limit-without-bound',
  'bounds-reversed',
  // patterns, orders and passes
  'pattern-layout',
  'duplicate-fastener',
  'fasteners-overlap',
  'order-missing',
  'order-not-permutation',
  'generated-order-on-head',
  'pass-kind',
  'stray-key',
  'repeat-without-torque',
  'repeat-after-angle',
  'angle-applied-twice',
  'fastener-in-no-pass',
  'left-slack',
  'setting-outside-wrenches',
  'angle-without-over-rule',
  // questions
  'too-few-wrong-answers',
  'question-twice',
  'hold-without-read-back',
  'answer-unspeakable',
  'duplicate-answer',
  'too-many-holds',
  // loose ends, milestones, timers, branches
  'closed-before-opened',
  'opened-twice',
  'milestone-while-open',
  'loose-end-never-closed',
  'timer-never-started',
  'timer-already-over',
  'branch-before-question',
  // listening
  'sentence-too-long',
  'text-too-long',
  'warning-after-action',
] as const;
export type IssueCode = (typeof ISSUE_CODES)[number];

export type Severity = 'error' | 'warning';

/** One thing wrong with a document: where, what was given, and the finding that is put into words where it is shown. */
export type ProcedureIssue = {
  readonly code: IssueCode;
  readonly severity: Severity;
  readonly file: string;
  /** From 1. */
  readonly line: number;
  /** From 1, in UTF-16 code units. */
  readonly column: number;
  /** A piece of the document, or figures: nothing that is said in a language of its own. */
  readonly given: string;
  readonly finding: Finding;
};

/** Where something stands in the document: keys and list positions from the top. */
export type Path = readonly (string | number)[];

/** Tells one finding, by its key and the slots of its texts. */
export type Tell = <K extends FindingKey>(key: K, at: Path, given: string, slots: FindingSlots<K>) => void;

/** Collects what the checks find, so that one reading of a document tells everything that is wrong with it. */
export type Report = {
  readonly error: Tell;
  readonly warning: Tell;
  /** How the language of the document writes units out, for whoever reads a figure and reports on it. */
  readonly units: UnitNames;
};
