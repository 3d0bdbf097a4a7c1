import type { Pieces } from '../core/pieces';
import type { After } from '../store/log-writer';

/** So long, in ms, may work keep the page from answering: a quarter of what a person notices. */
const AT_ONCE_MS = 25;

export type Breathing = { readonly now: () => number; readonly after: After };

/** Does work in pieces and lets the page answer between them. `tell` is given the share done; short work tells nothing. */
export async function inPieces<T>(
  work: Pieces<T>,
  { now, after }: Breathing,
  tell: (share: number) => void,
): Promise<T> {
  for (let began = now(); ; ) {
    const step = work.next();
    if (step.done) return step.value;
    if (now() - began < AT_ONCE_MS) continue;
    tell(step.value);
    await new Promise<void>((resolve) => after(0, resolve));
    began = now();
  }
}

/** A share of one part of the whole as a share of all of it. */
export const partOf =
  (from: number, to: number, tell: (share: number) => void) =>
  (share: number): void =>
    tell(from + (to - from) * share);
