import { convert, type Printed } from '../../fastening/quantity';
import type { Built } from '../build/build-procedure';
import type { Path, Report } from '../issue';
import type { Pass, Procedure, Step } from '../procedure';
import { conditionOf } from './condition';

type Tightening = Extract<Step, { readonly kind: 'tighten' | 'slacken' }>;

/** What a fastener has had since it was last slack. */
type Worked = { readonly torque: Printed | null; readonly angled: boolean };
const SLACK: Worked = { torque: null, angled: false };
type Bolts = ReadonlyMap<number, Worked>;

/** Passes looked at together: what a repeat repeats, what is left slack, which wrench can be set so. */
export function checkPasses({ procedure, steps, written }: Built, report: Report): void {
  const tightened = new Map<string, Set<number>>();
  const standing = new Map<string, Bolts>();
  for (const { step, at } of steps) {
    if (step.kind !== 'tighten' && step.kind !== 'slacken') continue;
    const bolts = followBolts(step, standing.get(step.pattern) ?? new Map(), at, report);
    // What one branch did is not there on the other, so only steps that are always done carry over to later steps.
    if (conditionOf(step) === 'always') standing.set(step.pattern, bolts);
    for (const [index, pass] of step.passes.entries()) {
      const here = [...at, 'passes', index];
      if (pass.kind === 'torque' || pass.kind === 'repeat') checkWrench(procedure, pass, pass.target, here, report);
      if (pass.kind === 'angle' && pass.recovery.over === undefined)
        report.warning('angle-without-over-rule', here, pass.id, {});
    }
    if (step.kind === 'tighten') {
      const done = tightened.get(step.pattern) ?? new Set();
      for (const pass of step.passes) if (pass.kind !== 'slacken') for (const number of pass.order) done.add(number);
      tightened.set(step.pattern, done);
    }
  }
  for (const [id, done] of tightened) {
    const left = procedure.patterns.get(id)?.fasteners.filter(({ number }) => !done.has(number)) ?? [];
    const at = written.patterns.get(id);
    if (left.length > 0 && at !== undefined)
      report.warning('fastener-in-no-pass', at, left.map(({ number }) => number).join(', '), {});
  }
}

/** Follows every bolt through the passes of one step, from how earlier steps left it. */
function followBolts({ kind, passes }: Tightening, before: Bolts, at: Path, report: Report): Bolts {
  const bolts = new Map(before);
  for (const [index, pass] of passes.entries()) {
    if (kind === 'slacken' && pass.kind !== 'slacken' && pass.kind !== 'wait')
      report.error('pass-kind.slackening', [...at, 'passes', index], pass.kind, { kind: pass.kind });
    if (pass.kind === 'repeat') checkRepeat(pass, bolts, [...at, 'passes', index], report);
    for (const number of pass.order) bolts.set(number, after(pass, bolts.get(number) ?? SLACK));
  }
  const touched = new Set(passes.flatMap(({ order }) => order));
  const slack = [...touched].filter((number) => bolts.get(number) === SLACK);
  if (kind === 'tighten' && slack.length > 0)
    report.error(
      'left-slack',
      [...at, 'passes', passes.findLastIndex((pass) => pass.kind === 'slacken')],
      slack.join(', '),
      {},
    );
  return bolts;
}

function after(pass: Pass, worked: Worked): Worked {
  switch (pass.kind) {
    case 'torque':
    case 'repeat':
      return { ...worked, torque: pass.target };
    case 'angle':
      return { ...worked, angled: true };
    case 'slacken':
      return SLACK;
    case 'wait':
      return worked;
  }
}

function checkRepeat(pass: Extract<Pass, { kind: 'repeat' }>, bolts: Bolts, at: Path, report: Report): void {
  const angled = pass.order.filter((number) => bolts.get(number)?.angled);
  if (angled.length > 0) report.error('repeat-after-angle', at, angled.join(', '), {});
  const fresh = pass.order.filter((number) => !sameTorque(bolts.get(number)?.torque ?? null, pass.target));
  if (fresh.length > 0)
    report.error('repeat-without-torque', [...at, 'repeat'], fresh.join(', '), { torque: pass.target.printed });
}

const sameTorque = (had: Printed | null, now: Printed): boolean => had?.value === now.value && had.unit === now.unit;

/** Some listed wrench must be able to be set to the target: the one the pass names, where that has a range. */
function checkWrench({ tools }: Procedure, pass: Pass, target: Printed, at: Path, report: Report): void {
  const named = pass.tool === undefined ? undefined : tools.get(pass.tool);
  const wrenches = named?.range ? [named] : [...tools.values()].filter(({ range }) => range !== undefined);
  const inside = wrenches.some(({ range }) => {
    const setting = range && convert(target, range.unit);
    return setting?.ok && range?.window && setting.value >= range.window.least && setting.value <= range.window.most;
  });
  const torque = target.printed;
  if (inside) return;
  if (named?.range) report.warning('setting-outside-wrenches.named', at, torque, { tool: named.say, torque });
  else report.warning('setting-outside-wrenches', at, torque, { torque });
}
