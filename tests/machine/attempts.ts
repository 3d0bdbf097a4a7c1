import { type Command, command, MANNERS, type RuleName } from '../../src/core/job/command';
import type { Moment } from '../../src/core/job/entry';
import type { Job } from '../../src/core/job/job';
import { offersOf } from '../../src/core/job/offers';
import { cursorOf, workPlace } from '../../src/core/job/place';
import { passIn, stepIn } from '../../src/core/job/plan';
import { markDegrees } from '../../src/core/job/tightening';
import type { SlotDomain, SlotValue } from '../../src/core/language/grammar';
import type { Pass } from '../../src/core/procedure/procedure';

export type Attempt = { readonly command: Command; readonly now: Moment };

/** Long enough for every wait of every shipped procedure to be over. */
export const MUCH_LATER = 400 * 24 * 3_600_000;

export const moment = (mono: number): Moment => ({ at: mono, mono, session: 's' });

/** Out of place on purpose almost everywhere: the machine must refuse them there. */
const ALWAYS_TRIED: readonly Command[] = [
  ...(['done', 'confirm', 'close-job', 'skip-step'] as const).map((rule) => command(rule)),
  command('bolt-done', { bolt: { kind: 'integer', value: 99 } }),
];

/** Everything that is offered, with a legal, an edge and an illegal slot; where a wait matters, before and after it. */
export function attemptsAt(job: Job): readonly Attempt[] {
  const tried = new Map<string, Command>();
  const add = (c: Command): void => {
    tried.set(JSON.stringify(c), c);
  };
  for (const offer of offersOf(job)) {
    const rule = offer.rule as RuleName;
    if (MANNERS[rule] === 'harmless' || rule === 'stop') continue;
    for (const slots of slotChoices(offer.slots, job)) add(command(rule, slots));
  }
  for (const c of ALWAYS_TRIED) add(c);
  return [...tried.values()].flatMap((c) => (waitMatters(job, c) ? [0, MUCH_LATER] : [0]).map((m) => at(c, m)));
}

const at = (c: Command, mono: number): Attempt => ({ command: c, now: moment(mono) });

/** Time decides only over waits, and over what a bare "done" is about after a quiet spell. */
function waitMatters(job: Job, c: Command): boolean {
  if (c.rule === 'close-job' || c.rule === 'clicked' || job.pending?.kind === 'close-job') return true;
  const place = workPlace(job);
  if (place.kind === 'pass') return c.rule === 'done';
  if (place.kind !== 'step' || (c.rule !== 'done' && c.rule !== 'answer' && c.rule !== 'measured')) return false;
  const { step } = stepIn(job.plan, place.step);
  return step.kind === 'wait' || step.needsTimers.length > 0;
}

function slotChoices(slots: Readonly<Record<string, SlotDomain>>, job: Job): readonly Record<string, SlotValue>[] {
  return Object.entries(slots).reduce<readonly Record<string, SlotValue>[]>(
    (done, [name, domain]) => done.flatMap((d) => valuesOf(name, domain, job).map((v) => ({ ...d, [name]: v }))),
    [{}],
  );
}

function valuesOf(slot: string, domain: SlotDomain, job: Job): readonly SlotValue[] {
  switch (domain.kind) {
    case 'integers':
      return [...new Set(integersOf(slot, domain.values, job))].map((value) => ({ kind: 'integer', value }));
    case 'reading':
      return [settingNow(job) ?? domain.least, domain.most].map((value) => ({ kind: 'reading', value, unit: null }));
    case 'named':
      return domain.ids.slice(0, 1).map((id) => ({ kind: 'option', id }));
    case 'options':
      return optionsOf(slot, domain.options).map(({ id }) => ({ kind: 'option', id }));
  }
}

/** Every answer of a question; of the many other things a slot can name, the first and the last. */
function optionsOf<T>(slot: string, options: readonly T[]): readonly T[] {
  if (slot === 'answer' || options.length < 3) return options;
  return [options[0], options.at(-1)].flatMap((o) => (o === undefined ? [] : [o]));
}

function integersOf(slot: string, values: readonly number[], job: Job): readonly number[] {
  const pass = passNow(job);
  switch (slot) {
    case 'degrees':
      return pass?.kind === 'angle' ? [values[0] ?? 0, pass.degrees, Math.max(...values)] : [];
    case 'clock': {
      if (!pass) return [];
      const { before, after } = markDegrees(pass.passes, pass.index);
      return [hourOf(before), hourOf(after), hourOf(after + 90)];
    }
    default: {
      const cursor = Number(cursorOf(job));
      const first = values.includes(cursor) ? cursor : values[0];
      return [first, values.at(-1)].flatMap((v) => (v === undefined ? [] : [v]));
    }
  }
}

const hourOf = (degrees: number): number => Math.round(degrees / 30) % 12 || 12;

function passNow(job: Job): (Pass & { readonly passes: readonly Pass[]; readonly index: number }) | undefined {
  const place = workPlace(job);
  if (place.kind !== 'pass') return undefined;
  const { passes } = stepIn(job.plan, place.step);
  const pass = passIn(job.plan, place.step, place.pass);
  return { ...pass, passes, index: passes.indexOf(pass) };
}

function settingNow(job: Job): number | undefined {
  const place = workPlace(job);
  if (place.kind !== 'pass' || place.part !== 'set') return undefined;
  const pass = passIn(job.plan, place.step, place.pass);
  if (pass.kind === 'torque' || pass.kind === 'repeat') return pass.target.value;
  return pass.kind === 'angle' ? pass.degrees : undefined;
}
