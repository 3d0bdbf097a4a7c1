import { bolts, count, degrees, quantity, reply, text } from '../../phrasing/reply';
import type { Pass, Step } from '../../procedure/procedure';
import { echoBolt, whereIs } from '../announce';
import { type Command, integerIn, readingIn } from '../command';
import { asks, type Decision, does, refused } from '../decision';
import type { EntryBody, Moment } from '../entry';
import type { Job } from '../job';
import { passStatesOf, workPlace } from '../place';
import { type PassPart, passIn, stepIn } from '../plan';
import { boltState, expectedBolt, type PassState, passState } from '../tightening';
import { faultEntry } from './fault';
import { after } from './settle';

export type AtPass = {
  readonly step: Step;
  readonly pass: Pass;
  readonly passes: readonly Pass[];
  readonly part: PassPart;
  readonly state: PassState;
};

/** The pass being worked, or undefined where the job is not at one. */
export function passAt(job: Job): AtPass | undefined {
  const place = workPlace(job);
  if (place.kind !== 'pass') return undefined;
  const { step, passes } = stepIn(job.plan, place.step);
  const pass = passIn(job.plan, place.step, place.pass);
  return { step, pass, passes, part: place.part, state: passState(passStatesOf(job, step.id), pass.id) };
}

const QUIET_MS = 3 * 60_000;

/** A bare report is only about the expected bolt while the work flows; after a quiet spell it is asked which one. */
export const isQuiet = (job: Job, now: Moment): boolean =>
  job.interrupted ||
  (job.lastWork !== null && (job.lastWork.session !== now.session || now.mono - job.lastWork.mono > QUIET_MS));

export function clickedOrDone(job: Job, _c: Command, now: Moment): Decision | undefined {
  const at = passAt(job);
  if (!at) return undefined;
  if (at.part === 'wait') return undefined;
  const bolt = expectedBolt(at.pass, at.state);
  if (at.part !== 'work' || bolt === undefined) return refused(reply('not-here', {}));
  if (isQuiet(job, now))
    return asks(
      [{ kind: 'asked', question: { kind: 'which-bolt', step: at.step.id, pass: at.pass.id } }],
      reply('which-bolt', { bolt: count(bolt) }),
    );
  return report(job, at, bolt, now);
}

export function boltDone(job: Job, c: Command, now: Moment): Decision {
  const at = passAt(job);
  const bolt = integerIn(c, 'bolt');
  if (at?.part !== 'work' || bolt === undefined) return refused(reply('not-here', {}));
  return report(job, at, bolt, now);
}

/** The truth about one fastener: done in order, done out of order, or refused with the reason. */
function report(job: Job, at: AtPass, bolt: number, now: Moment): Decision {
  if (!at.pass.order.includes(bolt)) return refused(reply('bolt-not-in-pass', { bolt: count(bolt) }));
  const state = boltState(at.state, bolt);
  switch (state.kind) {
    case 'done':
      return refused(reply('bolt-already-done', { bolt: count(bolt) }));
    case 'held':
      return refused(reply('bolt-held', { bolt: count(bolt) }));
    case 'unknown':
      return refused(
        at.pass.kind === 'angle'
          ? reply('bolt-unknown', { bolt: count(bolt) })
          : reply('unknown-torque', { bolt: count(bolt) }),
      );
    case 'partial':
      if (at.pass.kind === 'angle' && state.degrees < at.pass.window.least)
        return refused(
          reply('angle-short', { degrees: degrees(state.degrees), left: degrees(at.pass.degrees - state.degrees) }),
        );
      return inOrder(job, at, bolt, now);
    case 'open': {
      const expected = expectedBolt(at.pass, at.state);
      return bolt === expected || expected === undefined ? inOrder(job, at, bolt, now) : astray(at, bolt, expected);
    }
  }
}

function inOrder(job: Job, at: AtPass, bolt: number, now: Moment): Decision {
  const entry: EntryBody = { kind: 'bolt-done', step: at.step.id, pass: at.pass.id, bolt, inOrder: true };
  return does([entry], echoBolt(after(job, [entry], now), at.step, at.pass, bolt));
}

/** Work out of order has happened: it is written down as it is, and the pass cannot end until its rule is applied. */
function astray(at: AtPass, bolt: number, expected: number): Decision {
  const here = { step: at.step.id, pass: at.pass.id };
  return does(
    [
      { kind: 'bolt-done', ...here, bolt, inOrder: false },
      { kind: 'order-broken', ...here },
    ],
    [reply('bolt-done-out-of-order', { bolt: count(bolt), expected: count(expected) })],
  );
}

/** "Bolts one through six": only the run of the order that starts at the expected bolt is taken. */
export function boltsDone(job: Job, c: Command): Decision {
  const at = passAt(job);
  const from = integerIn(c, 'from');
  const to = integerIn(c, 'to');
  if (at?.part !== 'work' || from === undefined || to === undefined) return refused(reply('not-here', {}));
  const start = at.pass.order.indexOf(from);
  const end = at.pass.order.indexOf(to);
  const run = at.pass.order.slice(start, end + 1);
  const open = run.filter((b) => boltState(at.state, b).kind === 'open');
  if (start < 0 || end < start || from !== expectedBolt(at.pass, at.state) || open.length !== run.length) {
    const expected = expectedBolt(at.pass, at.state) ?? from;
    return refused(reply('which-bolt', { bolt: count(expected) }));
  }
  const entries = run.map(
    (bolt): EntryBody => ({ kind: 'bolt-done', step: at.step.id, pass: at.pass.id, bolt, inOrder: true }),
  );
  return does(entries, [reply('bolts-done', { bolts: bolts(run) }), ...sayNext(at, run)]);
}

function sayNext(at: AtPass, done: readonly number[]) {
  const next = at.pass.order.find((b) => !done.includes(b) && boltState(at.state, b).kind !== 'done');
  return next === undefined ? [] : [reply('next-number', { next: count(next) })];
}

/** Total degrees turned so far on the expected bolt. Over the window is a fault, inside it the bolt is done. */
export function soFar(job: Job, c: Command): Decision {
  const at = passAt(job);
  const total = integerIn(c, 'degrees');
  const bolt = at ? expectedBolt(at.pass, at.state) : undefined;
  if (at?.part !== 'work' || at.pass.kind !== 'angle' || total === undefined || bolt === undefined)
    return refused(reply('not-here', {}));
  const state = boltState(at.state, bolt);
  if (state.kind === 'unknown') return refused(reply('bolt-unknown', { bolt: count(bolt) }));
  if (state.kind === 'held') return refused(reply('bolt-held', { bolt: count(bolt) }));
  const before = state.kind === 'partial' ? state.degrees : 0;
  if (total <= before) return refused(reply('angle-not-more', { degrees: degrees(before) }));
  const turn: EntryBody = { kind: 'bolt-turned', step: at.step.id, pass: at.pass.id, bolt, degrees: total };
  if (total > at.pass.window.most) {
    const { entry, replies } = faultEntry(at, bolt, 'went-past');
    return does([turn, entry], replies);
  }
  if (total >= at.pass.window.least)
    return does(
      [turn, { kind: 'bolt-done', step: at.step.id, pass: at.pass.id, bolt, inOrder: true }],
      [reply('bolt-done', { bolt: count(bolt) }), ...nextAfter(job, at, bolt)],
    );
  return does([turn], [reply('angle-so-far', { degrees: degrees(total), left: degrees(at.pass.degrees - total) })]);
}

function nextAfter(job: Job, at: AtPass, bolt: number) {
  const next = at.pass.order.find((b) => b !== bolt && boltState(at.state, b).kind !== 'done');
  return next === undefined ? [] : [reply('side-is', { bolt: count(next), where: text(whereIs(job, at.step, next)) })];
}

/** The number on the tool, read back. Only the right number lets the pass begin. */
export function setAt(job: Job, c: Command): Decision {
  const at = passAt(job);
  const given = readingIn(c, 'setting');
  if (at?.part !== 'set' || given === undefined) return refused(reply('not-here', {}));
  const wanted =
    at.pass.kind === 'torque' || at.pass.kind === 'repeat'
      ? at.pass.target
      : { value: at.pass.kind === 'angle' ? at.pass.degrees : 0, unit: 'deg' as const };
  const sameUnit = given.unit === null || given.unit === wanted.unit;
  if (given.value !== wanted.value || !sameUnit)
    return refused(
      reply('setting-wrong', { given: { kind: 'digits', value: given.value, unit: null }, setting: quantity(wanted) }),
    );
  return does(
    [{ kind: 'setting-confirmed', step: at.step.id, pass: at.pass.id, value: wanted.value, unit: wanted.unit }],
    [reply('setting-taken', { setting: quantity(wanted) })],
  );
}

export function allMarked(job: Job): Decision {
  const at = passAt(job);
  if (at?.part !== 'mark') return refused(reply('not-here', {}));
  return does([{ kind: 'heads-marked', step: at.step.id, pass: at.pass.id }], [reply('marked-taken', {})]);
}
