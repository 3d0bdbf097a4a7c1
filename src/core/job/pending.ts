import type { UnitName } from '../fastening/quantity';

/** A critical command waiting for its confirmation. Nothing in it has happened yet; a restart drops it. */
export type Pending =
  | { readonly kind: 'skip-step'; readonly step: string }
  | { readonly kind: 'sign-off'; readonly end: string; readonly reason: string }
  | { readonly kind: 'override-order'; readonly step: string; readonly pass: string }
  | { readonly kind: 'repeat-pass'; readonly step: string; readonly pass: string }
  | { readonly kind: 'slacken-all'; readonly step: string }
  | {
      readonly kind: 'reading';
      readonly step: string;
      readonly reading: string;
      readonly value: number;
      readonly unit: UnitName;
    }
  | { readonly kind: 'adapter'; readonly millimetres: number | null; readonly degrees: number }
  | { readonly kind: 'which-bolt'; readonly step: string; readonly pass: string }
  /** A bolt that is not the expected one: naming it once more confirms it, naming another puts that in its place. */
  | { readonly kind: 'out-of-order'; readonly step: string; readonly pass: string; readonly bolt: number }
  | {
      readonly kind: 'held-bolt';
      readonly step: string;
      readonly pass: string;
      readonly bolt: number;
      readonly as: 'done' | 'open';
    }
  /** Where a mark was said to point: said once more it proves what it proves, another hour takes its place. */
  | {
      readonly kind: 'mark';
      readonly step: string;
      readonly pass: string;
      readonly bolt: number;
      readonly clock: number;
    }
  /** A torque read at the end of a turn that is not over the floor: it costs the bolt, so it is asked back. */
  | {
      readonly kind: 'floor';
      readonly step: string;
      readonly pass: string;
      readonly bolt: number;
      readonly value: number;
      /** As it was read out; logs of version 1 knew the unit of the floor only. */
      readonly unit?: UnitName;
    }
  /** Leaving an angle pass half done: every mark is looked at first. */
  | {
      readonly kind: 'marks';
      readonly step: string;
      readonly pass: string;
      readonly leaving: 'knock-off' | 'hand-over';
    }
  /** After an angle was taken back: was the bolt turned or not? Until a clear answer it is UNKNOWN. */
  | { readonly kind: 'turned-or-not'; readonly step: string; readonly pass: string; readonly bolt: number }
  | { readonly kind: 'close-job' }
  | { readonly kind: 'hand-over' };
