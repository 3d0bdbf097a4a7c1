import { type Command, command, type RuleName } from '../../core/job/command';
import { passAt } from '../../core/job/decide/bolt';
import { placeOf } from '../../core/job/place';
import { stepIn } from '../../core/job/plan';
import { expectedBolt } from '../../core/job/tightening';
import { boltDone, readingCommand } from './onward';
import { give, giveAll, later, type Trial } from './trial';

/** A place beside the way, and what happened on the way to it. */
export type SideTrip = { readonly after: string; readonly trial: Trial };

/** Longer than the quiet spell after which a bare "done" is asked back. */
const QUIET = 4 * 60_000;

/** The places one can get to from here by doing something else than going on: questions, faults, doubts, a break. */
export function sideTrips(trial: Trial): readonly SideTrip[] {
  const ends = [...trial.job.ends].filter(([, end]) => end.why !== 'dropped');
  const signOff = ends[0] && signOffCommand(ends[0][0]);
  const trips: readonly (SideTrip | undefined)[] = [
    trip('a break', give(trial, 'hold-on')),
    trip('something was dropped', give(trial, 'dropped-one')),
    trip('the job is handed over', give(trial, 'hand-over')),
    trip('this step is skipped', give(trial, 'skip-step')),
    trip('the step before was skipped', giveAll(trial, ['skip-step', 'confirm'])),
    trip('something open is signed off', signOff && give(trial, signOff)),
    trip('the job is closed', give(trial, 'close-job')),
    trip('a reading out of its limit', outOfLimit(trial)),
    ...boltTrips(trial),
  ];
  return trips.filter((one) => one !== undefined);
}

const trip = (after: string, trial: Trial | undefined): SideTrip | undefined => trial && { after, trial };

const signOffCommand = (end: string): Command =>
  command('sign-off', { end: { kind: 'option', id: end }, reason: { kind: 'option', id: 'waiting-for-a-part' } });

const notSure = (bolt: number): Command => command('not-sure', { bolt: { kind: 'integer', value: bolt } });
const markAtTwelve = command('mark-at', { clock: { kind: 'integer', value: 12 } });
const adapterOn = command('adapter-on', { length: { kind: 'reading', value: 50, unit: 'mm' } });

function outOfLimit(trial: Trial): Trial | undefined {
  const place = placeOf(trial.job);
  if (place.kind !== 'step') return undefined;
  const reading = readingCommand(trial, stepIn(trial.job.plan, place.step).step, false);
  return reading && give(trial, reading);
}

function boltTrips(trial: Trial): readonly (SideTrip | undefined)[] {
  const at = passAt(trial.job);
  const bolt = at?.part === 'work' ? expectedBolt(at.pass, at.state) : undefined;
  if (!at || bolt === undefined) return [];
  const [first, ...others] = at.pass.order;
  // A bolt out of its turn is asked back, and written down once it is confirmed.
  const astray = others.toReversed().flatMap((n): (Command | RuleName)[] => [boltDone(n), 'confirm']);
  const backwards = first === undefined ? undefined : giveAll(trial, [...astray, boltDone(first)]);
  const faults: readonly RuleName[] = ['clicked-early', 'felt-soft', 'went-past', 'snapped'];
  return [
    ...faults.map((fault) => trip(`bolt: ${fault.replace('-', ' ')}`, give(trial, fault))),
    trip('a bolt is in doubt', give(trial, notSure(bolt))),
    trip('a bare "done" after a quiet spell', give(later(trial, QUIET), 'done')),
    trip('a bolt is taken back', giveAll(trial, [boltDone(bolt), 'take-back'])),
    trip('repeating the pass', give(trial, 'repeat-pass')),
    trip('all slackened', give(trial, 'slacken-all')),
    trip('a mark is read', giveAll(trial, [notSure(bolt), markAtTwelve])),
    trip('an adapter is put on', give(trial, adapterOn)),
    trip('a held bolt by the word of the manual', giveAll(trial, ['felt-soft', 'go-ahead-anyway'])),
    trip('knocking off inside the pass', giveAll(trial, [boltDone(bolt), 'knocking-off'])),
    trip('a bolt out of its turn', others[0] === undefined ? undefined : give(trial, boltDone(others[0]))),
    trip('work out of order', backwards),
    trip('going ahead after work out of order', backwards && give(backwards, 'go-ahead-anyway')),
    trip('repeating the pass after work out of order', backwards && give(backwards, 'repeat-pass')),
  ];
}
