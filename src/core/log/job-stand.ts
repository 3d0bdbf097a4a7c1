import type { Head } from './chain';

/** Raised whenever the same log would be told otherwise: what an older program kept is then worked out once more. */
export const STAND_VERSION = 1;

/**
 * Where a job stands, for a list of jobs that must not fold every log. Kept beside the job's card and never part of its
 * log: it is worth something only while `head` is the head of the log, and is worked out from the log where it is not.
 * Names of steps and phases are the document's own words; all others are put to it when it is shown.
 */
export type JobStand = {
  readonly version: number;
  /** The log it was worked out from. */
  readonly head: Head;
  readonly at: StandingAt;
  readonly isPaused: boolean;
  /** How many loose ends there are. */
  readonly ends: number;
  /** UTC wall time in ms of the last work, or of the beginning where there was none yet. */
  readonly worked: number;
  /** What is worked on, as it was said when the job was begun. */
  readonly machine: string;
};

/** `number` counts from 1 of `total`; `done` of `bolts` in this pass. */
export type StandingAt =
  | {
      readonly kind: 'pass';
      readonly step: string;
      readonly number: number;
      readonly total: number;
      readonly done: number;
      readonly bolts: number;
    }
  | {
      readonly kind: 'step';
      readonly step: string;
      readonly phase: string;
      readonly number: number;
      readonly total: number;
    }
  | { readonly kind: 'closing' | 'closed' };

/** Whether it may be shown for a log that ends at `head`. */
export const isOf = (stand: JobStand | null, { seq, hash }: Head): stand is JobStand =>
  stand?.version === STAND_VERSION && stand.head.seq === seq && stand.head.hash === hash;
