import type { RuleName } from '../job/command';
import type { Point } from '../procedure/procedure';

/** Everything the Bench screen shows, already in words. The screen draws it and decides nothing. */
export type BenchView = {
  readonly title: string;
  /** What words mean now: a sentence shown under another one is not taken. */
  readonly revision: string;
  readonly demonstration: boolean;
  readonly phase: string;
  /** "Step 4 of 12" or "Pass 3 of 6, bolt 7 of 10", in words; the procedure's title where all steps are done. */
  readonly placeWords: string;
  /** The line being worked: the step, the bolt, or the question asked. */
  readonly line: string;
  /** The value to work to, huge: "40 N·m", "90°", "0.05 mm"; null where there is none. */
  readonly value: string | null;
  /** The same in the other common unit, small. */
  readonly valueAlso: string | null;
  readonly hazards: readonly { readonly kind: 'warning' | 'caution' | 'note'; readonly text: string }[];
  readonly drawing: PatternDrawing | null;
  readonly swing: Swing | null;
  readonly looseEnds: readonly string[];
  readonly timers: readonly { readonly say: string; readonly leftMs: number; readonly over: boolean }[];
  /** Other wrenches of one's own that can be set for this pass, each with its setting and error. */
  readonly wrenches: readonly { readonly id: string; readonly words: string }[];
  /** What can be said now, one example sentence each, the likeliest first. */
  readonly words: readonly { readonly rule: RuleName; readonly example: string }[];
  /** The four fallback buttons: what each does now. An empty place keeps the others where the hand knows them. */
  readonly buttons: readonly (BenchButton | null)[];
  readonly mood: 'working' | 'asking' | 'paused' | 'closed';
};

export type BenchButton = { readonly command: RuleName; readonly label: string; readonly slots: 'none' | 'cursor' };

export type FastenerMark = 'open' | 'next' | 'partial' | 'done' | 'unknown' | 'held' | 'idle';

/** A casting drawn from its coordinates in millimetres; each fastener told by number and shape, never by colour alone. */
export type PatternDrawing = {
  readonly say: string;
  readonly viewedFrom: string;
  readonly outline: readonly Point[];
  readonly landmarks: readonly { readonly say: string; readonly at: Point }[];
  readonly fasteners: readonly {
    readonly number: number;
    readonly at: Point;
    readonly mark: FastenerMark;
    /** Its place in this pass's order, 1 first; null where it is not in the pass. */
    readonly turn: number | null;
    /** How far it has been turned, where it is part way through an angle: "45°". */
    readonly turned?: string;
    /** The cursor stands here: also on one that is part way, unknown or held. Left out: where the mark is `next`. */
    readonly here?: boolean;
  }[];
};

/** How far the bolt at the cursor has to go, in degrees, and the clock hours its mark starts from and ends at. */
export type Swing = {
  readonly turned: number;
  readonly left: number;
  readonly fromHour: number;
  readonly toHour: number;
  readonly words: string;
};

/** The ear as the screen shows it. */
export type EarView = {
  readonly state: 'off' | 'loading' | 'listening' | 'speaking' | 'too-loud' | 'shut' | 'waiting' | 'failed';
  readonly trouble: string | null;
  /** Loudness 0..1 of the last block. */
  readonly level: number;
  readonly heard: {
    readonly words: string;
    /** How it came in: by voice and how sure that was, by a button or a tap, written; or not taken at all. */
    readonly how: 'sure' | 'hardly-sure' | 'touch' | 'typed' | 'rejected';
    /** What it did, or why it did nothing. */
    readonly did: string;
  } | null;
};

/** What the person did on a screen; the composition root turns it into commands. */
export type BenchEvent =
  | { readonly type: 'command'; readonly command: RuleName; readonly slots: 'none' | 'cursor' }
  | { readonly type: 'use-wrench'; readonly wrench: string }
  | { readonly type: 'typed'; readonly words: string }
  /** A sentence that was offered to be tapped, under the revision it was offered under. */
  | { readonly type: 'tapped'; readonly words: string; readonly revision: string }
  /** Push-to-talk. */
  | { readonly type: 'pedal'; readonly down: boolean };
