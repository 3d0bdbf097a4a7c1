import type { Measured, UnitName, Window } from '../fastening/quantity';
import type { Entry } from '../job/entry';
import type { Job } from '../job/job';
import { isLeftOut, passStatesOf } from '../job/place';
import { type BoltState, boltState, passState } from '../job/tightening';
import type { Pass } from '../procedure/procedure';
import { exceptionsOf } from './exceptions';
import { type Means, meansOf, standing } from './standing';

/** One fastener in one pass, as it was confirmed. Every value is somebody's word, never a reading of the tool. */
export type BoltRecord = {
  readonly bolt: number;
  readonly where: string;
  readonly state: BoltState['kind'];
  readonly confirmed: {
    readonly seq: number;
    readonly at: number;
    readonly who: string;
    readonly means: Means | null;
  } | null;
  /** Degrees of each swing of an angle pass, as reported; they sum to what was turned. */
  readonly swings: readonly number[];
  /** What the wrench was said to be set at. */
  readonly setting: Measured | null;
  /** Entries out of the ordinary about this fastener in this pass. */
  readonly exceptions: readonly Entry[];
};

export type PassRecord = {
  readonly step: string;
  readonly pass: string;
  readonly tightening: string;
  readonly say: string;
  readonly kind: Pass['kind'];
  /** As the document prints it; null for a wait. */
  readonly target: { readonly printed: string; readonly value: number; readonly unit: UnitName } | null;
  readonly window: Window | null;
  readonly lubrication: string | null;
  readonly bolts: readonly BoltRecord[];
};

/**
 * Pass by bolt, for every tightening of the procedure but those that an answer left out: the job, and the log it is the
 * fold of. A fastener that was opened again has no confirmation.
 */
export function fastenerRecord(job: Job, entries: readonly Entry[]): readonly PassRecord[] {
  const { plan } = job;
  const told = tellings(entries);
  return [...plan.steps.values()].flatMap(({ step, passes }) => {
    if (step.kind !== 'tighten' && step.kind !== 'slacken') return [];
    // What has been touched is told, whatever was answered afterwards.
    if (isLeftOut(job, step) && passStatesOf(job, step.id).size === 0) return [];
    const where = new Map(plan.procedure.patterns.get(step.pattern)?.fasteners.map((f) => [f.number, f.say]));
    return passes
      .filter((pass) => pass.kind !== 'wait')
      .map((pass) => ({
        step: step.id,
        pass: pass.id,
        tightening: step.say,
        say: pass.say,
        kind: pass.kind,
        ...figuresOf(pass),
        lubrication: pass.lubrication ?? null,
        bolts: pass.order.map((bolt) => boltRecord(job, told, step.id, pass, bolt, where.get(bolt) ?? '')),
      }));
  });
}

type AtBolt = { readonly step: string; readonly pass: string; readonly bolt: number };

type Telling = {
  confirmed: BoltRecord['confirmed'];
  turns: readonly number[];
  /** What is told next belongs to a new attempt. */
  isOver: boolean;
  setting: Measured | null;
  exceptions: Entry[];
};

const keyOf = (step: string, pass: string, bolt: number): string => `${step}/${pass}/${bolt}`;

/** Gathers what the log says of each fastener; whether it still holds is asked of the folded job afterwards. */
function tellings(entries: readonly Entry[]): ReadonlyMap<string, Telling> {
  const means = meansOf(entries);
  const told = new Map<string, Telling>();
  const settings = new Map<string, Measured>();
  const at = (e: AtBolt): Telling => {
    const key = keyOf(e.step, e.pass, e.bolt);
    const one = told.get(key) ?? { confirmed: null, turns: [], isOver: false, setting: null, exceptions: [] };
    told.set(key, one);
    return one;
  };
  const confirm = (e: AtBolt & Pick<Entry, 'seq' | 'at' | 'who'>): void => {
    const one = at(e);
    if (one.isOver) one.turns = [];
    one.isOver = true;
    one.confirmed = { seq: e.seq, at: e.at, who: e.who, means: means.get(e.seq) ?? null };
    one.setting = settings.get(`${e.step}/${e.pass}`) ?? null;
  };
  for (const e of standing(entries)) {
    switch (e.kind) {
      case 'setting-confirmed':
        settings.set(`${e.step}/${e.pass}`, { value: e.value, unit: e.unit });
        break;
      case 'bolt-turned': {
        const one = at(e);
        one.turns = [...(one.isOver ? [] : one.turns), e.degrees];
        one.isOver = false;
        break;
      }
      case 'pass-repeated':
      case 'all-slackened': {
        const prefix = e.kind === 'pass-repeated' ? `${e.step}/${e.pass}/` : `${e.step}/`;
        for (const [key, one] of told) if (key.startsWith(prefix)) one.isOver = true;
        break;
      }
      case 'bolt-replaced':
        at(e).isOver = true;
        break;
      case 'bolt-done':
        confirm(e);
        break;
      case 'bolt-proved':
        if (e.verdict === 'done') confirm(e);
        else at(e).isOver = true;
        break;
      case 'bolt-fault':
        if (e.action === 'accept') confirm(e);
        else if (e.action !== 'note') at(e).isOver = true;
        break;
      default:
        break;
    }
  }
  for (const { entry } of exceptionsOf(entries)) if ('bolt' in entry) at(entry).exceptions.push(entry);
  return told;
}

function boltRecord(
  job: Job,
  told: ReadonlyMap<string, Telling>,
  step: string,
  pass: Pass,
  bolt: number,
  where: string,
): BoltRecord {
  const state = boltState(passState(passStatesOf(job, step), pass.id), bolt);
  const one = told.get(keyOf(step, pass.id, bolt));
  const isDone = state.kind === 'done';
  return {
    bolt,
    where,
    state: state.kind,
    confirmed: isDone ? (one?.confirmed ?? null) : null,
    swings: pass.kind === 'angle' ? swingsOf(one?.turns ?? [], state, pass.degrees) : [],
    setting: isDone ? (one?.setting ?? null) : null,
    exceptions: one?.exceptions ?? [],
  };
}

function swingsOf(turns: readonly number[], state: BoltState, whole: number): readonly number[] {
  const reached = state.kind === 'done' ? whole : state.kind === 'partial' ? state.degrees : 0;
  const sums = [...turns.filter((sum) => sum < reached), ...(reached > 0 ? [reached] : [])];
  return sums.map((sum, i) => sum - (sums[i - 1] ?? 0));
}

function figuresOf(pass: Pass): Pick<PassRecord, 'target' | 'window'> {
  switch (pass.kind) {
    case 'torque':
    case 'repeat':
      return { target: pass.target, window: pass.window ?? pass.target.window ?? null };
    case 'angle':
      return { target: { printed: `${pass.degrees}°`, value: pass.degrees, unit: 'deg' }, window: pass.window };
    case 'slacken':
      return { target: { printed: `${pass.degrees}°`, value: pass.degrees, unit: 'deg' }, window: null };
    case 'wait':
      return { target: null, window: null };
  }
}
