import { baseOf } from '../../fastening/quantity';
import type { PassText, RecoveryText } from '../document/passes';
import type { Path, Report } from '../issue';
import { FAULTS, type Fault, type Pass, type PassCommon, type Recovery, type RecoveryAction } from '../procedure';
import { checkId } from '../repeat';
import { type OrderedPattern, orderOf, subsetOf } from './order';
import { readQuantity, withWindow } from './quantity';

/** What a step says once for all its passes. */
export type StepDefaults = {
  readonly tool: string | undefined;
  readonly lubrication: string | undefined;
  readonly recovery: RecoveryText | undefined;
};

const KINDS = ['torque', 'repeat', 'angle', 'slacken', 'wait'] as const;
type Kind = (typeof KINDS)[number];

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
    if (earlier.has(text.id))
      report.error(
        'duplicate-id',
        [...here, 'id'],
        text.id,
        `Two passes are called "${text.id}".`,
        'Give one of them another id.',
      );
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
  return withKind(kind, text, common, at, report);
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
function recoveryOf(kind: Kind, ofStep: RecoveryText, own: RecoveryText, at: Path, report: Report): Recovery {
  const recovery: Partial<Record<Fault, NonNullable<RecoveryText[Fault]>>> = {};
  for (const fault of FAULTS) {
    const rule = own[fault] ?? ofStep[fault];
    if (rule === undefined) continue;
    if (kind !== 'angle' || !AGAIN.has(rule.action)) recovery[fault] = rule;
    else if (own[fault] !== undefined)
      report.error(
        'angle-applied-twice',
        [...at, fault, 'action'],
        rule.action,
        'This would turn a bolt through its angle a second time.',
        'Use restart-bolt, restart-all or accept, or leave the fault out: the job then stops.',
      );
  }
  return recovery;
}

function kindOf(text: PassText, at: Path, report: Report): Kind | null {
  const given = KINDS.filter((kind) => text[kind] !== undefined);
  const [kind, ...others] = given;
  if (kind === undefined || others.length > 0) {
    const what = given.join(', ') || 'none';
    report.error(
      'pass-kind',
      at,
      what,
      'A pass does exactly one thing.',
      'Give one of torque, repeat, angle, slacken, wait.',
    );
    return null;
  }
  const allowed: readonly string[] =
    kind === 'torque' || kind === 'repeat' ? ['window'] : kind === 'angle' ? ['window', 'swings'] : [];
  for (const key of ['window', 'swings', ...(kind === 'wait' ? (['of', 'order', 'tool'] as const) : [])] as const)
    if (text[key] !== undefined && !allowed.includes(key))
      report.error('stray-key', [...at, key], key, `"${key}" means nothing in a ${kind} pass.`, 'Delete it.');
  return kind;
}

function withKind(kind: Kind, text: PassText, common: PassCommon, at: Path, report: Report): Pass | null {
  switch (kind) {
    case 'torque':
    case 'repeat': {
      const target = readQuantity(text[kind] ?? '', 'torque', [...at, kind], report);
      if (target === null || !positive(target.value, [...at, kind], report)) return null;
      if (text.window === undefined)
        return { ...common, kind, target, ...(target.window && { window: target.window }) };
      const window = readQuantity(text.window, 'torque', [...at, 'window'], report);
      const bounds = window?.unit === target.unit ? window.window : undefined;
      if (bounds === undefined) {
        if (window !== null)
          report.error(
            'wrong-unit',
            [...at, 'window'],
            text.window,
            'The window is not a range in the unit of its target.',
            `Write it like 38–42 ${target.unit}.`,
          );
        return null;
      }
      const held = withWindow(target, bounds, [...at, 'window'], report);
      return held && { ...common, kind, target: held, window: bounds };
    }
    case 'angle': {
      const target = readQuantity(text.angle ?? '', 'angle', [...at, kind], report);
      const window =
        text.window === undefined
          ? target?.window
          : readQuantity(text.window, 'angle', [...at, 'window'], report)?.window;
      if (target === null || !positive(target.value, [...at, kind], report)) return null;
      if (window === undefined) {
        report.error(
          'window-missing',
          [...at, kind],
          text.angle ?? '',
          'An angle without a window cannot be judged.',
          'Write the window after it: 90° (85–95).',
        );
        return null;
      }
      const held = withWindow(target, window, [...at, kind], report);
      const degrees = held === null ? null : baseOf(held, 'angle');
      return degrees?.ok ? { ...common, kind, degrees: degrees.value, window, swings: text.swings ?? 1 } : null;
    }
    case 'slacken': {
      const target = readQuantity(text.slacken ?? '', 'angle', [...at, kind], report);
      const degrees =
        target === null || !positive(target.value, [...at, kind], report) ? null : baseOf(target, 'angle');
      return degrees?.ok ? { ...common, kind, degrees: degrees.value } : null;
    }
    case 'wait':
      return { ...common, kind, timer: text.wait ?? '' };
  }
}

function positive(value: number, at: Path, report: Report): boolean {
  if (value > 0) return true;
  report.error(
    'out-of-range',
    at,
    String(value),
    'This must be more than nothing.',
    'Write the figure from the manual.',
  );
  return false;
}
