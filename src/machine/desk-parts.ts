import type { RuleName } from '../core/job/command';
import type { Effect } from '../core/job/decision';
import type { Entry, EntryBody, Moment } from '../core/job/entry';
import type { Job } from '../core/job/job';
import type { LiveGrammar, Meaning, Offer } from '../core/language/grammar';
import type { Reply } from '../core/phrasing/reply';
import type { Clock, Recogniser, RejectReason, Voice } from '../core/ports';
import type { Result } from '../core/result';
import type { EarState } from './ear-view';

export type Phrased = { readonly spoken: string; readonly shown: string };

/** What the desk is built from. Everything outside comes in here; the desk itself touches nothing else. */
export type DeskParts = {
  readonly job: Job;
  readonly entries: readonly Entry[];
  readonly recogniser: Recogniser;
  readonly voice: Voice;
  readonly clock: Clock;
  readonly session: string;
  readonly who: string;
  readonly record: (
    bodies: readonly EntryBody[],
    stamp: Moment & { readonly who: string },
  ) => { readonly entries: readonly Entry[]; readonly written: Promise<Result<void, unknown>> };
  readonly liveGrammar: (offers: readonly Offer[], revision: string) => LiveGrammar;
  readonly interpret: (live: LiveGrammar, words: string) => Meaning;
  /** A few sentences that can be said in this job now, the likeliest first. */
  readonly examples: (job: Job) => readonly string[];
  /** The same to be told: they give no answer away. */
  readonly teach: (job: Job) => readonly string[];
  readonly phrase: (replies: readonly Reply[]) => Phrased;
  /** Effects that need more than the desk has: recording a note, taking a picture, making a hand-over file, ... */
  readonly perform: (effect: Effect) => void;
  readonly after: (ms: number, run: () => void) => () => void;
};

/** How words came in. */
export type Hand = 'voice' | 'touch' | 'typed';

export type HeardView = {
  readonly words: string;
  readonly score: number;
  readonly by: Hand;
} & (
  | { readonly did: 'command'; readonly outcome: RuleName }
  | { readonly did: 'rejected'; readonly outcome: RejectReason | 'almost' }
);

/** All that a screen or a test can see of a desk. */
export type DeskView = {
  readonly job: Job;
  readonly entries: readonly Entry[];
  readonly said: Phrased | null;
  readonly saidCode: string;
  readonly heard: HeardView | null;
  readonly ear: EarState;
  readonly live: LiveGrammar;
  readonly earsOff: boolean;
  readonly notSaved: boolean;
  /** From the first word of a reply until nothing more is waiting to be said, gaps included. */
  readonly talking: boolean;
};
