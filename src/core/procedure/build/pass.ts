import type { PassText, RecoveryText } from '../document/passes';
import type { Path, Report } from '../issue';
import { FAULTS, type Fault, type Pass, type PassCommon, type Recovery, type RecoveryAction } from '../procedure';
import { checkId } from '../repeat';
import { type OrderedPattern, orderOf, subsetOf } from './order';
import { PASS_KINDS, type PassKind, withFigures } from './pass-figures';

/** What a step says once for all its passes. */
export type StepDefaults = {
  readonly tool: string | undefined;
  readonly lubrication: string | undefined;
  readonly recovery: RecoveryText | undefined;
};

/** The passes of a step; those that cannot be made sense of are left out and reported. */
export function buildPasses(
  texts: readonly PassText[],
  ordered: OrderedPattern,
  defaults: StepDefaults,
  at: Path,
  report: Report,
): readonly Pass[] {
  const earlier = new Map<string, readonly number[]>();
  return texts.flatMap((text, index) => {
    const here = [...at, index];
    checkId(text.id, [...here, 'id'], report);
    if (earlier.has(text.id)) report.error('duplicate-id.pass', [...here, 'id'], text.id, { id: text.id });
    const pass = buildPass(text, ordered, defaults, earlier, here, report);
    earlier.set(text.id, pass?.order ?? []);
    return pass ?? [];
  });
}

function buildPass(
  text: PassText,
  ordered: OrderedPattern,
  defaults: StepDefaults,
  earlier: ReadonlyMap<string, readonly number[]>,
  at: Path,
  report: Report,
): Pass | null {
  const kind = kindOf(text, at, report);
  if (kind === null) return null;
  const of = kind === 'wait' ? [] : subsetOf(ordered.pattern, text.of, [...at, 'of'], report);
  if (of === null) return null;
  const generated = text.generated === true;
  const order = kind === 'wait' ? [] : orderOf(ordered, { of, order: text.order, generated, earlier, at }, report);
  if (order === null) return null;
  const tool = text.tool ?? defaults.tool;
  const lubrication = text.lubrication ?? defaults.lubrication;
  const common: PassCommon = {
    id: text.id,
    say: text.say,
    order,
    ...(isGenerated(text, ordered) && { generated: true as const }),
    ...(tool !== undefined && { tool }),
    ...(lubrication !== undefined && { lubrication }),
    recovery: recoveryOf(kind, defaults.recovery ?? {}, text.recovery ?? {}, [...at, 'recovery'], report),
  };
  return withFigures(kind, text, common, at, report);
}

const isWorkedOut = (order: unknown): boolean => order === 'centre-out' || order === 'cross';

const isGenerated = (text: PassText, { text: pattern }: OrderedPattern): boolean =>
  text.order === undefined ? isWorkedOut(pattern.order) : isWorkedOut(text.order);

/** Actions that do a pass again over what already has it. */
const AGAIN: ReadonlySet<RecoveryAction> = new Set(['redo-bolt', 'repeat-pass']);

/**
 * The step's rules under the pass's own. An angle is never applied twice: an angle pass does not take over a rule that
 * would, and may not have one itself.
 */
function recoveryOf(kind: PassKind, ofStep: RecoveryText, own: RecoveryText, at: Path, report: Report): Recovery {
  const recovery: Partial<Record<Fault, NonNullable<RecoveryText[Fault]>>> = {};
  for (const fault of FAULTS) {
    const rule = own[fault] ?? ofStep[fault];
    if (rule === undefined) continue;
    if (kind !== 'angle' || !AGAIN.has(rule.action)) recovery[fault] = rule;
    else if (own[fault] !== undefined) report.error('angle-applied-twice', [...at, fault, 'action'], rule.action, {});
  }
  return recovery;
}

function kindOf(text: PassText, at: Path, report: Report): PassKind | null {
  const given = PASS_KINDS.filter((kind) => text[kind] !== undefined);
  const [kind, ...others] = given;
  if (kind === undefined || others.length > 0) {
    report.error('pass-kind', at, given.join(', '), {});
    return null;
  }
  const allowed: readonly string[] =
    kind === 'torque' || kind === 'repeat' ? ['window'] : kind === 'angle' ? ['window', 'swings', 'floor'] : [];
  for (const key of [
    'window',
    'swings',
    'floor',
    ...(kind === 'wait' ? (['of', 'order', 'tool'] as const) : []),
  ] as const)
    if (text[key] !== undefined && !allowed.includes(key)) report.error('stray-key', [...at, key], key, { key, kind });
  return kind;
}
