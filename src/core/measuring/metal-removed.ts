import { type Millimetres, millimetres } from '../fastening/quantity';

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
  const removed = tidy(sum);
  return { removed, left: tidy(Math.max(0, limit.most - removed)), over: tidy(Math.max(0, removed - limit.most)) };
}

/** To a millionth of a millimetre, so that two cuts of 0.1 leave exactly nothing of 0.2. */
const tidy = (value: number): Millimetres => millimetres(Number(value.toFixed(6)));
