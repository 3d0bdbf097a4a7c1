import { ok } from '../core/result';
import type { Piece } from './mouth';

/** Nothing to hear: over as soon as it begins. */
export const SILENT_PIECE: Piece = {
  ms: 0,
  sound: (ended) => {
    const timer = setTimeout(() => ended(ok(undefined)));
    return () => clearTimeout(timer);
  },
};
