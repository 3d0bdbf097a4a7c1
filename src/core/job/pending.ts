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
  | { readonly kind: 'adapter'; readonly millimetres: number | null }
  | { readonly kind: 'which-bolt'; readonly step: string; readonly pass: string }
  /** After an angle was taken back: was the bolt turned or not? Until a clear answer it is UNKNOWN. */
  | { readonly kind: 'turned-or-not'; readonly step: string; readonly pass: string; readonly bolt: number }
  | { readonly kind: 'close-job' }
  | { readonly kind: 'hand-over' };
