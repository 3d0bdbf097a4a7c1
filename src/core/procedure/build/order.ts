import { centreOut, cross } from '../../fastening/order';
import type { OrderText, PatternText, SubsetText } from '../document/fasteners';
import { part } from '../finding';
import type { Path, Report } from '../issue';
import type { Fastener, Pattern } from '../procedure';

/** A pattern with the order its document gives it. */
export type OrderedPattern = { readonly pattern: Pattern; readonly text: PatternText; readonly at: Path };

/** The numbers a pass is about: all, a group, or a list. Null when some of them are not there. */
export function subsetOf(
  pattern: Pattern,
  of: SubsetText | undefined,
  at: Path,
  report: Report,
): readonly number[] | null {
  if (of === undefined) return pattern.fasteners.map(({ number }) => number);
  if (typeof of === 'string') {
    const members = pattern.fasteners.filter(({ group }) => group === of).map(({ number }) => number);
    if (members.length > 0) return members;
    const groups = [...new Set(pattern.fasteners.flatMap(({ group }) => group ?? []))];
    const named = { pattern: pattern.id, group: of };
    if (groups.length === 0) report.error('unknown-group.no-groups', at, of, named);
    else report.error('unknown-group', at, of, { ...named, groups });
    return null;
  }
  return knownNumbers(pattern, of, at, report) ? of : null;
}

function knownNumbers(pattern: Pattern, numbers: readonly number[], at: Path, report: Report): boolean {
  const known = new Set(pattern.fasteners.map(({ number }) => number));
  const strangers = numbers.flatMap((number, index) => (known.has(number) ? [] : [{ number, index }]));
  for (const { number, index } of strangers)
    report.error('unknown-fastener', [...at, index], String(number), { pattern: pattern.id, number });
  return strangers.length === 0;
}

export type OrderRequest = {
  readonly of: readonly number[];
  readonly order: OrderText | undefined;
  readonly generated: boolean;
  /** Orders of the passes above, by pass id, for "reverse of". */
  readonly earlier: ReadonlyMap<string, readonly number[]>;
  readonly at: Path;
};

/** The order of a pass over its subset, or null with the reason reported. */
export function orderOf(ordered: OrderedPattern, request: OrderRequest, report: Report): readonly number[] | null {
  const { of, order, at } = request;
  if (order !== undefined) return resolve(ordered, order, of, request, [...at, 'order'], report);
  const own = ordered.text.order;
  if (own === undefined) {
    report.error('order-missing', at, ordered.pattern.id, {});
    return null;
  }
  if (typeof own === 'string' && own.startsWith('reverse')) {
    report.error('not-one-of.own-order', [...ordered.at, 'order'], own, {});
    return null;
  }
  const generated = request.generated || ordered.text.generated === true;
  const everything = ordered.pattern.fasteners.map(({ number }) => number);
  const whole = resolve(ordered, own, everything, { ...request, generated }, [...ordered.at, 'order'], report);
  const members = new Set(of);
  return whole?.filter((number) => members.has(number)) ?? null;
}

function resolve(
  ordered: OrderedPattern,
  order: OrderText,
  of: readonly number[],
  request: OrderRequest,
  at: Path,
  report: Report,
): readonly number[] | null {
  if (typeof order !== 'string') return permutation(ordered.pattern, order, of, at, report);
  if (order === 'centre-out' || order === 'cross') {
    if (ordered.pattern.joint === 'head' && !request.generated) {
      report.error('generated-order-on-head', at, order, {});
      return null;
    }
    const members = new Set(of);
    const fasteners = ordered.pattern.fasteners.filter(({ number }) => members.has(number));
    return generate(order, fasteners);
  }
  const source = /^reverse(?: of (\S+))?$/.exec(order);
  if (source === null) {
    report.error('not-one-of.order', at, order, { order });
    return null;
  }
  return reversed(ordered, source[1], of, request, at, report);
}

const generate = (order: 'centre-out' | 'cross', fasteners: readonly Fastener[]): readonly number[] =>
  order === 'cross' ? cross(fasteners) : centreOut(fasteners);

/** The reverse of an earlier pass, or of the pattern's own order: how a joint is slackened. */
function reversed(
  ordered: OrderedPattern,
  passId: string | undefined,
  of: readonly number[],
  request: OrderRequest,
  at: Path,
  report: Report,
): readonly number[] | null {
  if (passId === undefined) return orderOf(ordered, { ...request, order: undefined }, report)?.toReversed() ?? null;
  const earlier = request.earlier.get(passId);
  if (earlier === undefined) {
    report.error('unknown-pass', at, passId, { pass: passId });
    return null;
  }
  return permutation(ordered.pattern, earlier.toReversed(), of, at, report);
}

function permutation(
  pattern: Pattern,
  order: readonly number[],
  of: readonly number[],
  at: Path,
  report: Report,
): readonly number[] | null {
  if (!knownNumbers(pattern, order, at, report)) return null;
  const wanted = new Set(of);
  const missing = of.filter((number) => !order.includes(number));
  const strange = order.filter((number) => !wanted.has(number));
  const twice = order.filter((number, index) => order.indexOf(number) !== index);
  if (missing.length + strange.length + twice.length === 0) return order;
  const faults = [
    ...(missing.length > 0 ? [part('numbers-missing', { numbers: missing })] : []),
    ...(strange.length > 0 ? [part('numbers-strange', { numbers: strange })] : []),
    ...(twice.length > 0 ? [part('numbers-twice', { numbers: twice })] : []),
  ];
  report.error('order-not-permutation', at, order.join(', '), { faults });
  return null;
}
