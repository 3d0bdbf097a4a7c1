import { type Millimetres, millimetres } from '../fastening/quantity';
import { steady } from '../fastening/steady';

/** Metal taken off one face, ever: a head may come with some gone already. */
export type Cut = { readonly face: string; readonly depth: Millimetres };

/** How much may be removed in all, in mm, and from which faces together: head alone, or head and block. */
export type RemovalLimit = {
  readonly name: string;
  readonly whose: string;
  readonly most: Millimetres;
  readonly faces: readonly string[];
};

export type RemovalVerdict = {
  readonly removed: Millimetres;
  /** What may still come off; zero when the limit is reached. */
  readonly left: Millimetres;
  /** By how much too much is gone; zero when it is not. */
  readonly over: Millimetres;
};

/** Adds up, in mm, the cuts on the faces that share a limit. */
export function removalVerdict(cuts: readonly Cut[], limit: RemovalLimit): RemovalVerdict {
  const sum = cuts.filter((cut) => limit.faces.includes(cut.face)).reduce((total, cut) => total + cut.depth, 0);
  const removed = steady(millimetres(sum));
  return {
    removed,
    left: steady(millimetres(Math.max(0, limit.most - removed))),
    over: steady(millimetres(Math.max(0, removed - limit.most))),
  };
}
