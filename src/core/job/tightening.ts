import type { Pass } from '../procedure/procedure';
import type { BoltFault, UnknownWhy } from './entry';

/** One fastener in one pass. Only `done` counts; `held` and `unknown` block the pass until someone settles them. */
export type BoltState =
  | { readonly kind: 'open' }
  | { readonly kind: 'partial'; readonly degrees: number }
  /** `doubtful`: tightened with a wrench that had been dropped. */
  | { readonly kind: 'done'; readonly inOrder: boolean; readonly doubtful: boolean }
  /** `had`: the degrees reported before the doubt, 0 where there were none. */
  | { readonly kind: 'unknown'; readonly why: UnknownWhy; readonly had: number }
  | { readonly kind: 'held'; readonly fault: BoltFault | 'replaced' };

export type PassState = {
  readonly setting: number | null;
  readonly marked: boolean;
  readonly bolts: ReadonlyMap<number, BoltState>;
  /** True while work out of order waits for its rule to be applied. */
  readonly orderBroken: boolean;
  readonly waited: boolean;
  /** Bolts whose torque was read over the floor of the pass. */
  readonly read: ReadonlySet<number>;
};

export type PassStates = ReadonlyMap<string, PassState>;

const OPEN: BoltState = { kind: 'open' };
const FRESH: PassState = {
  setting: null,
  marked: false,
  bolts: new Map(),
  orderBroken: false,
  waited: false,
  read: new Set(),
};

export const passState = (states: PassStates, pass: string): PassState => states.get(pass) ?? FRESH;
export const boltState = (state: PassState, bolt: number): BoltState => state.bolts.get(bolt) ?? OPEN;

export const withPass = (states: PassStates, pass: string, change: Partial<PassState>): PassStates =>
  new Map(states).set(pass, { ...passState(states, pass), ...change });

export function withBolt(states: PassStates, pass: string, bolt: number, to: BoltState): PassStates {
  const before = passState(states, pass);
  const bolts = new Map(before.bolts).set(bolt, to);
  const again = to.kind === 'open' || to.kind === 'held';
  return withPass(states, pass, { bolts, ...(again && { read: without(before.read, bolt) }) });
}

const without = (read: ReadonlySet<number>, bolt: number): ReadonlySet<number> =>
  read.has(bolt) ? new Set([...read].filter((one) => one !== bolt)) : read;

/** Whether the torque of this bolt is still to be read before it can be done. */
export const needsReading = (pass: Pass, state: PassState, bolt: number): boolean =>
  pass.kind === 'angle' && pass.floor !== undefined && !state.read.has(bolt);

/**
 * The first fastener of the pass, in its order, that is not done: the one everything refers to. After the last of them
 * come those that were reported out of order and owe their torque: they are done, and the pass is not.
 */
export const expectedBolt = (pass: Pass, state: PassState): number | undefined =>
  pass.order.find((bolt) => boltState(state, bolt).kind !== 'done') ??
  pass.order.find((bolt) => needsReading(pass, state, bolt));

export const boltsLeft = (pass: Pass, state: PassState): number =>
  pass.order.filter((bolt) => boltState(state, bolt).kind !== 'done' || needsReading(pass, state, bolt)).length;

export function isComplete(pass: Pass, state: PassState): boolean {
  if (pass.kind === 'wait') return state.waited;
  return !state.orderBroken && boltsLeft(pass, state) === 0;
}

/** Index of the first pass after the last finished full slacken before `index`: angles count from here. */
export function sinceSlacken(passes: readonly Pass[], index: number): number {
  for (let i = index - 1; i >= 0; i--) if (passes[i]?.kind === 'slacken') return i + 1;
  return 0;
}

/** Whether any fastener of this pass has been given an angle since the last full slacken: then torque is never repeated. */
export function anyAngleSince(passes: readonly Pass[], states: PassStates, index: number): boolean {
  const pass = passes[index];
  if (!pass) return false;
  return passes.slice(sinceSlacken(passes, index), index + 1).some((p) => {
    if (p.kind !== 'angle') return false;
    const state = passState(states, p.id);
    return pass.order.some((bolt) => boltState(state, bolt).kind !== 'open');
  });
}

/** Every fastener of `only` (or all) open again in the passes from..to; settings and marks must be given anew. */
export function reopened(
  passes: readonly Pass[],
  states: PassStates,
  from: number,
  to: number,
  only?: number,
): PassStates {
  const next = new Map(states);
  for (const pass of passes.slice(from, to + 1)) {
    const old = passState(states, pass.id);
    if (only !== undefined && !pass.order.includes(only)) continue;
    const bolts = new Map(old.bolts);
    for (const bolt of only === undefined ? pass.order : [only]) bolts.delete(bolt);
    const read = only === undefined ? FRESH.read : without(old.read, only);
    next.set(pass.id, { ...FRESH, bolts, read, orderBroken: only === undefined ? false : old.orderBroken });
  }
  return next;
}

export { markDegrees } from './marks';
