import type { UnitName } from '../fastening/quantity';
import type { Milestone } from '../procedure/procedure';
import type { AdapterOn } from './adapter';
import type { ChosenWrench } from './chosen-wrench';
import type { Entry } from './entry';
import { NO_PAST, type Past } from './evolve/past';
import type { Pending } from './pending';
import type { Plan } from './plan';
import type { PassStates } from './tightening';

/** Where a job stands: nothing but the fold of its log over the plan of its procedure. */
export type Job = {
  readonly plan: Plan;
  readonly id: string;
  readonly status: 'new' | 'open' | 'closed';
  /** State entries so far, kept so that taking one back can fold the rest again. */
  readonly entries: readonly Entry[];
  readonly undone: ReadonlySet<number>;
  readonly last: Entry | null;
  readonly steps: ReadonlyMap<string, 'done' | 'skipped'>;
  readonly answers: ReadonlyMap<string, string>;
  readonly tightening: ReadonlyMap<string, PassStates>;
  readonly readings: ReadonlyMap<string, ReadonlyMap<string, Reading>>;
  /** What is off, open, plugged, lost or left out just now, in the order it came off. */
  readonly ends: ReadonlyMap<string, LooseEnd>;
  readonly timers: ReadonlyMap<string, Timer>;
  readonly list: readonly string[];
  readonly paused: boolean;
  /** True from an interruption until a fastener or step has been named again. */
  readonly interrupted: boolean;
  readonly pending: Pending | null;
  /** Fasteners confirmed one after the other without a break: replies shrink with it. */
  readonly streak: number;
  /** Counts the entries after which the same words may mean something else: nearly all, but no notes and no pictures. */
  readonly attempt: number;
  /** The wrenches really in hand, by the tool the document names. */
  readonly wrenches: ReadonlyMap<string, ChosenWrench>;
  /** Every wrench there is to choose from. */
  readonly owned: readonly ChosenWrench[];
  /** Wrenches that fell in this job, by their own id: nobody is offered one of them again. */
  readonly fallen: ReadonlySet<string>;
  readonly adapter: AdapterOn | null;
  /** Tools dropped and neither signed off nor changed for another since: what they tighten is marked. */
  readonly dropped: ReadonlySet<string>;
  /** Who may be named as having checked something. */
  readonly people: readonly string[];
  /** Tightenings that have been begun: what is said before the first fastener has been said. */
  readonly begun: ReadonlySet<string>;
  /** Tightenings there is time for, as the person said before the first fastener. */
  readonly timeGiven: ReadonlySet<string>;
  /** Numbers only, as the person asked. */
  readonly terse: boolean;
  readonly past: Past;
  readonly lastWork: { readonly mono: number; readonly session: string } | null;
};

export type Reading = { readonly value: number; readonly unit: UnitName; readonly within: boolean | null };

export type LooseEnd = {
  readonly what: string;
  readonly blocks: Milestone;
  readonly why: 'step' | 'dropped' | 'came-off' | 'skipped' | 'wrench';
};

/** A wait. Elapsed time is carried over sessions; inside one the monotonic clock runs it, so no clock change shortens it. */
export type Timer = {
  readonly say: string;
  readonly ms: number;
  readonly elapsedMs: number;
  readonly session: string;
  readonly sinceMono: number;
};

export const newJob = (plan: Plan): Job => ({
  plan,
  id: '',
  status: 'new',
  entries: [],
  undone: new Set(),
  last: null,
  steps: new Map(),
  answers: new Map(),
  tightening: new Map(),
  readings: new Map(),
  ends: new Map(),
  timers: new Map(),
  list: [],
  paused: false,
  interrupted: false,
  pending: null,
  streak: 0,
  attempt: 0,
  wrenches: new Map(),
  owned: [],
  fallen: new Set(),
  adapter: null,
  dropped: new Set(),
  people: [],
  begun: new Set(),
  timeGiven: new Set(),
  terse: false,
  past: NO_PAST,
  lastWork: null,
});
