import type { UnitName } from '../../core/fastening/quantity';
import type { Finding } from '../../core/procedure/finding';
import type { RecoveryAction } from '../../core/procedure/procedure';

/** What a new document is written from: the page of a manual, as far as it can be typed in one line. */
export type Draft = {
  readonly id: string;
  readonly title: string;
  readonly machine: string;
  readonly edition: string;
  readonly source: string;
  readonly demonstration: boolean;
  /** What the set of fasteners is called when it is spoken of: "rocker cover". */
  readonly name: string;
  readonly joint: 'head' | 'flange' | 'plain';
  /** From where the picture in the manual is drawn. */
  readonly viewedFrom: string;
  readonly layout: LayoutDraft;
  readonly order: OrderDraft;
  readonly subsets: readonly SubsetDraft[];
  readonly passes: readonly PassDraft[];
  readonly lubrication: string;
  readonly bolts: 'new' | 'reuse';
  /** The part of the wrench's scale that may be used, as typed; null where it was not given. */
  readonly wrench: string | null;
  /** What the manual says about a bolt turned too far; null leaves the job to stop there. */
  readonly over: RecoveryAction | null;
};

/** Lengths in millimetres; x to the right, y down, as in the picture. */
export type LayoutDraft =
  | { readonly kind: 'circle'; readonly count: number; readonly diameter: number }
  | {
      readonly kind: 'grid';
      readonly columns: readonly string[];
      readonly rows: readonly string[];
      readonly pitch: { readonly x: number; readonly y: number };
      /** Row by row from the top; 0 where there is no fastener. */
      readonly numbers: readonly (readonly number[])[];
    }
  | { readonly kind: 'places'; readonly at: readonly { readonly x: number; readonly y: number }[] };

export type OrderDraft =
  | { readonly kind: 'listed'; readonly numbers: readonly number[] }
  /** Worked out by rule. On a head that has to be said, since its maker's order comes first. */
  | { readonly kind: 'generated'; readonly rule: 'centre-out' | 'cross' };

export type SubsetDraft = { readonly name: string; readonly numbers: readonly number[] };

/** One pass; `figure` is what stands in the document, `of` the subset it is about or null for all. */
export type PassDraft =
  | {
      readonly kind: 'torque' | 'repeat';
      readonly figure: string;
      readonly value: number;
      readonly unit: UnitName;
      readonly of: string | null;
    }
  | {
      readonly kind: 'angle';
      readonly figure: string;
      /** True where the manual's line gave no window and the usual five degrees either way were written. */
      readonly windowAssumed: boolean;
      readonly of: string | null;
    }
  | { readonly kind: 'slacken'; readonly figure: string; readonly of: string | null }
  | { readonly kind: 'wait'; readonly figure: string };

/** The numbers of a layout in ascending order. */
export function numbersOf(layout: LayoutDraft): readonly number[] {
  switch (layout.kind) {
    case 'circle':
      return upTo(layout.count);
    case 'grid':
      return layout.numbers
        .flat()
        .filter((n) => n > 0)
        .toSorted((a, b) => a - b);
    case 'places':
      return upTo(layout.at.length);
  }
}

const upTo = (count: number): readonly number[] => Array.from({ length: count }, (_, index) => index + 1);

/** Why something typed cannot be written down as it stands. `column` counts from 1 in the text typed. */
export type DraftIssue = {
  readonly code:
    | 'blank-text'
    | 'bad-figure'
    | 'bad-layout'
    | 'bad-order'
    | 'bad-subset'
    | 'bad-pass'
    | 'generated-order-on-head';
  readonly column: number;
  readonly given: string;
} & (
  | { readonly message: string; readonly mend: string }
  /** Of a figure, the checker's own finding about it. */
  | { readonly finding: Finding }
);
