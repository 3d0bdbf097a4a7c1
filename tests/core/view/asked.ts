import { type Command, command, type RuleName } from '../../../src/core/job/command';
import type { Pending } from '../../../src/core/job/pending';
import { checkedText } from '../job/checked-text';
import { joint } from '../job/joint';
import { atFirstPass, bolt, markAt, notSure, setAt, shipped, Workbench } from '../job/workbench';

const reading = (value: number, unit: string | null = null) =>
  command('measured', { reading: { kind: 'reading', value, unit } });

const working = (target = 30): Workbench => {
  const w = new Workbench(joint([{ torque: target }, { angle: 90 }]));
  w.all('have-time', setAt(target));
  return w;
};

const turning = (): Workbench => {
  const w = working();
  w.all(bolt(1), bolt(2), bolt(3), setAt(90), 'all-marked');
  return w;
};

const asking = (w: Workbench, ...commands: readonly (Command | RuleName)[]): Workbench => {
  w.all(...commands);
  return w;
};

const quiet = (w: Workbench): Workbench => {
  w.give(bolt(1));
  w.wait(5 * 60_000);
  return w;
};

const floored = (): Workbench => {
  const w = new Workbench(checkedText('torque-floor').procedure);
  w.all('have-time', setAt(40), bolt(3), bolt(4), setAt(90), 'all-marked');
  return w;
};

/** A job for every question there is, brought to it by what a person would say. */
export const ASKED: Readonly<Record<Pending['kind'], () => Workbench>> = {
  'skip-step': () => asking(new Workbench(shipped('practice-plate')), 'skip-step'),
  'sign-off': () =>
    asking(
      new Workbench(shipped('tarnbeck-head-slice')),
      'done',
      'done',
      command('sign-off', {
        end: { kind: 'option', id: 'pressure-cap' },
        reason: { kind: 'option', id: 'waiting-for-a-part' },
      }),
    ),
  'override-order': () => asking(working(), bolt(1), bolt(3), bolt(3), bolt(2), 'go-ahead-anyway'),
  'repeat-pass': () => asking(atFirstPass(), setAt(30), bolt(1), 'repeat-pass'),
  'slacken-all': () => asking(atFirstPass(), setAt(30), bolt(1), 'slacken-all'),
  reading: () => asking(new Workbench(checkedText('thou-and-psi').procedure), reading(3, 'thou')),
  adapter: () =>
    asking(
      atFirstPass(),
      command('adapter-on', {
        length: { kind: 'reading', value: 2, unit: 'in' },
        degrees: { kind: 'integer', value: 90 },
      }),
    ),
  'which-bolt': () => asking(quiet(working()), 'done'),
  'out-of-order': () => asking(working(), bolt(3)),
  'held-bolt': () => asking(working(), bolt(1), 'clicked-early', 'go-ahead-anyway'),
  mark: () => asking(turning(), notSure(1), markAt(3)),
  floor: () => asking(floored(), reading(85)),
  marks: () => asking(turning(), bolt(1), 'knocking-off'),
  'turned-or-not': () => asking(turning(), bolt(1), 'take-back'),
  'close-job': () => asking(turning(), bolt(1), bolt(2), bolt(3), 'close-job'),
  'hand-over': () => asking(new Workbench(shipped('practice-plate')), 'hand-over'),
};
