import type { Reply } from '../phrasing/reply';
import type { ShowingRule } from './command';
import type { EntryBody } from './entry';

/** What must happen outside besides writing and speaking. Named here, done at the edge. */
export type Effect =
  /** Whatever sounds or records ends. */
  | 'hush'
  | 'ears-off'
  | 'ears-on'
  | 'record-note'
  | 'take-picture'
  | 'make-hand-over'
  | 'slower'
  | 'faster'
  | ShowingRule;

/** What a command does: entries to write first, then what to say. A refusal writes nothing and says why. */
export type Decision = {
  readonly verdict: 'done' | 'told' | 'asked' | 'refused';
  readonly entries: readonly EntryBody[];
  readonly replies: readonly Reply[];
  readonly effects: readonly Effect[];
};

export const told = (...replies: readonly Reply[]): Decision => ({
  verdict: 'told',
  entries: [],
  replies,
  effects: [],
});

export const refused = (...replies: readonly Reply[]): Decision => ({
  verdict: 'refused',
  entries: [],
  replies,
  effects: [],
});

export const does = (
  entries: readonly EntryBody[],
  replies: readonly Reply[],
  effects: readonly Effect[] = [],
): Decision => ({
  verdict: 'done',
  entries,
  replies,
  effects,
});

export const asks = (entries: readonly EntryBody[], ...replies: readonly Reply[]): Decision => ({
  verdict: 'asked',
  entries,
  replies,
  effects: [],
});
