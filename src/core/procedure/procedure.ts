import type { Grade } from '../fastening/grade';
import type { Printed, Window } from '../fastening/quantity';
import type { Estimates } from '../sums/estimate';
import type { Rule } from '../sums/rule';

/**
 * A checked procedure. Only `checkProcedure` makes one: past it nothing is validated again.
 * Every id is `^[a-z][a-z0-9-]*$`, every reference resolves, `for:` has been expanded.
 */
export type Procedure = {
  readonly format: 1;
  readonly language: string;
  readonly id: string;
  readonly title: string;
  readonly edition: string;
  /** True where the figures are invented or not from the maker of the machine at hand. */
  readonly demonstration: boolean;
  /** Where the figures come from, in the document's own words. */
  readonly source: string;
  readonly machine: string;
  readonly tools: ReadonlyMap<string, ToolSpec>;
  readonly parts: ReadonlyMap<string, PartSpec>;
  readonly patterns: ReadonlyMap<string, Pattern>;
  readonly looseEnds: ReadonlyMap<string, LooseEndSpec>;
  readonly timers: ReadonlyMap<string, TimerSpec>;
  readonly limits: ReadonlyMap<string, Limit>;
  /** How readings are worked out, by rules of the document's own. */
  readonly rules: ReadonlyMap<string, Rule>;
  /** Rough sums about a fastener that anybody may ask for; no pass takes a figure from them. */
  readonly estimates: Estimates;
  readonly phases: readonly Phase[];
};

/** Points in the job that must not be passed with something still open. In the order they come. */
export const MILESTONES = ['turn-by-hand', 'crank', 'fuel-on', 'first-start', 'hand-back'] as const;
export type Milestone = (typeof MILESTONES)[number];

export type ToolSpec = {
  readonly id: string;
  readonly say: string;
  readonly drive?: string;
  readonly socket?: string;
  /** For a torque wrench: the part of its scale that may be used; the window holds its ends. */
  readonly range?: Printed;
};

export type PartSpec = {
  readonly id: string;
  readonly say: string;
  readonly quantity: number;
  readonly use: 'new' | 'reuse' | 'measured';
  /** What decides about a measured part, in the document's own words. */
  readonly rule?: string;
  readonly consumable: boolean;
};

/** Anything opened, unplugged, removed or plugged with rag that must come back; it blocks its milestone and all later ones. */
export type LooseEndSpec = {
  readonly id: string;
  readonly say: string;
  readonly kind: 'removed' | 'unplugged' | 'opened' | 'rag';
  readonly blocks: Milestone;
};

export type TimerSpec = { readonly id: string; readonly say: string; readonly minutes: number };

/** A limit and whose limit it is: limits differ between makers, so they never live in code. */
export type Limit = {
  readonly id: string;
  readonly say: string;
  readonly whose: string;
  readonly least?: Printed;
  readonly most?: Printed;
};

export type Point = { readonly x: number; readonly y: number };

/** A named set of fasteners. Positions in millimetres, x to the right and y down as drawn from `viewedFrom`. */
export type Pattern = {
  readonly id: string;
  readonly say: string;
  /** A head is gasketed: its order is its maker's, and it is never eased bolt by bolt. Left out: plain. */
  readonly joint?: 'head' | 'flange' | 'plain';
  readonly viewedFrom: string;
  readonly outline: readonly Point[];
  readonly landmarks: readonly { readonly say: string; readonly at: Point }[];
  readonly fasteners: readonly Fastener[];
};

export type Fastener = {
  readonly number: number;
  readonly at: Point;
  /** Where it is, in words a person under the bonnet can use: "rear, exhaust side". */
  readonly say: string;
  /** Fasteners of one row are told apart by number alone; a change of row is said. */
  readonly row: string;
  readonly group?: string;
  readonly length?: Printed;
  readonly hole?: 'blind' | 'wet' | 'through';
  readonly sealer?: string;
  /** As designated: M10x1.25, 3/8-16. For sums to understand by; no pass takes a figure from it. */
  readonly thread?: string;
  readonly grade?: Grade;
};

export type Phase = { readonly id: string; readonly say: string; readonly steps: readonly Step[] };

export type StepCommon = {
  readonly id: string;
  readonly say: string;
  /** Can hurt a person; can damage the machine; good to know. Spoken in this order, before the action. */
  readonly warnings: readonly string[];
  readonly cautions: readonly string[];
  readonly notes: readonly string[];
  readonly tools: readonly string[];
  readonly parts: readonly string[];
  readonly opens: readonly string[];
  readonly closes: readonly string[];
  /** Doing this step passes the milestone: whatever blocks it must be closed first. */
  readonly milestone?: Milestone;
  /** A hold point when one answer is wrong; a required finding when all are right. */
  readonly question?: Question;
  readonly startsTimers: readonly string[];
  /** Timers that must have run out before this step may be done. */
  readonly needsTimers: readonly string[];
  /** Only done where an earlier question was answered so. */
  readonly only?: { readonly step: string; readonly answers: readonly string[] };
  readonly stow: readonly { readonly where: string; readonly what: string; readonly quantity: number }[];
  /** Words to take down for the record in this step, such as a serial number or who agreed. */
  readonly record?: readonly { readonly id: string; readonly say: string }[];
};

export type Question = {
  readonly ask: string;
  readonly answers: readonly { readonly id: string; readonly say: readonly string[]; readonly right: boolean }[];
  /** Said when a wrong answer is given. */
  readonly ifWrong: string;
};

export type Step = StepCommon &
  (
    | { readonly kind: 'do' | 'remove' | 'refit' | 'hold' }
    | { readonly kind: 'tighten' | 'slacken'; readonly pattern: string; readonly passes: readonly Pass[] }
    | {
        readonly kind: 'measure';
        readonly readings: readonly ReadingSpec[];
        readonly limit?: string;
        readonly worksOut?: readonly string[];
      }
    | { readonly kind: 'wait'; readonly timer: string }
    | { readonly kind: 'fill'; readonly what: string; readonly amount: Printed; readonly worksOut?: readonly string[] }
  );

export type ReadingSpec = {
  readonly id: string;
  readonly say: string;
  readonly unit: Printed['unit'];
  /** Outside these the words were misheard: asked back, never taken. */
  readonly least: number;
  readonly most: number;
  readonly decimals: number;
};

export type PassCommon = {
  readonly id: string;
  readonly say: string;
  /** The fasteners of this pass in the order they are done; a subset of the pattern. */
  readonly order: readonly number[];
  /** The order was worked out by rule, not printed by the maker; for a head that has to be said. */
  readonly generated?: true;
  readonly tool?: string;
  readonly lubrication?: string;
  readonly recovery: Recovery;
};

export type AngleTurn = {
  readonly kind: 'angle';
  readonly degrees: number;
  readonly window: Window;
  readonly swings: number;
  /** The torque read at the end of the turn must be over this; equal is not enough. */
  readonly floor?: Printed;
};

export type Pass = PassCommon &
  (
    | { readonly kind: 'torque'; readonly target: Printed; readonly window?: Window }
    /** The same torque once more over fasteners that already have it. */
    | { readonly kind: 'repeat'; readonly target: Printed; readonly window?: Window }
    | AngleTurn
    | { readonly kind: 'slacken'; readonly degrees: number }
    | { readonly kind: 'wait'; readonly timer: string }
  );

export const FAULTS = ['early', 'soft', 'over', 'under', 'snapped', 'out-of-order', 'replaced'] as const;
export type Fault = (typeof FAULTS)[number];

/** What the document says to do when something goes wrong in this pass. No rule for a fault means: stop, check the manual. */
export type Recovery = Readonly<Partial<Record<Fault, { readonly action: RecoveryAction; readonly say: string }>>>;

export const RECOVERY_ACTIONS = ['redo-bolt', 'restart-bolt', 'restart-all', 'repeat-pass', 'accept'] as const;
/**
 * redo-bolt: this pass again for this bolt. restart-bolt: this bolt from the first pass after the last full slacken.
 * restart-all: slacken all in reverse, all passes again. repeat-pass: this pass again from its first bolt. accept: as it is.
 */
export type RecoveryAction = (typeof RECOVERY_ACTIONS)[number];
