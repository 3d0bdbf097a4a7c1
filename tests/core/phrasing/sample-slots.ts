import {
  bolts,
  clock,
  count,
  degrees,
  digits,
  duration,
  list,
  quantity,
  REPLIES,
  type Reply,
  type ReplyCode,
  reason,
  replies,
  reply,
  type Said,
  text,
} from '../../../src/core/phrasing/reply';

const FORTY = quantity({ printed: '40 N·m', value: 40, unit: 'N·m' });
const PRESSURE_CAP = reply('end-named', { what: text('the pressure cap') });
const BOLT_SEVEN_DONE = reply('did-bolt', { bolt: count(7), pass: text('first pass') });

/** What the job core puts into each slot: the kind it really uses, with a likely value. */
const USUAL: Readonly<Record<string, Said>> = {
  advice: text('Lift the gasket off. Printed face up, mark to the radiator.'),
  after: clock(3),
  amount: quantity({ printed: '5.2 L', value: 5.2, unit: 'L' }),
  answer: text('printed face to the radiator'),
  before: clock(12),
  bolt: count(7),
  bolts: bolts([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]),
  clock: clock(3),
  degrees: degrees(90),
  done: count(6),
  ends: replies([PRESSURE_CAP, reply('end-dropped', {})]),
  expected: count(6),
  fault: replies([reply('fault-snapped', {})]),
  given: digits(30),
  gives: FORTY,
  highest: count(10),
  items: replies([BOLT_SEVEN_DONE, reply('did-marked', {})]),
  least: quantity({ value: 20, unit: 'N·m' }),
  left: count(3),
  length: quantity({ printed: '95 mm', value: 95, unit: 'mm' }),
  limit: text('0.05 mm over the whole face'),
  lubrication: text('oiled'),
  machine: text('Tarnbeck 32V6 petrol engine, forestry carrier'),
  most: quantity({ value: 100, unit: 'N·m' }),
  milestone: replies([reply('milestone-first-start', {})]),
  next: count(8),
  number: count(1),
  part: text('thermostat'),
  parts: list(['thermostat', 'top hose']),
  pass: text('first pass'),
  passes: count(1),
  person: text('Robin'),
  phase: text('Cool down and drain'),
  question: text('Which face is up, and which end does its mark point to?'),
  reading: text('front to back'),
  reason: reason('waiting-for-a-part'),
  rule: text('Do this pass again from its first bolt.'),
  setting: FORTY,
  swings: count(2),
  step: text('Take off the top hose at the thermostat housing.'),
  target: count(41),
  text: text('Ease the pressure cap to its stop. Let it hiss out, then take it off.'),
  timer: text('sealant skin'),
  timers: replies([reply('timer-running', { timer: text('sealant skin'), left: duration(600_000) })]),
  title: text('Left head gasket, the short run'),
  tool: text('torque wrench'),
  total: count(4),
  value: FORTY,
  view: text('square onto the head from above'),
  what: text('the pressure cap'),
  where: text('rear, exhaust side'),
  whose: text('the demonstration data'),
  words: text('bolt seven done'),
  wrench: text('half inch torque wrench'),
};

const TEN_MINUTES = duration(600_000);

/** Where the job core puts another kind into a slot of the same name. */
const OTHERWISE: Readonly<Partial<Record<ReplyCode, Readonly<Record<string, Said>>>>> = {
  'pass-begins': { bolts: count(10) },
  'place-in-pass': { bolts: count(10) },
  'shown-pass': { bolts: count(10) },
  'tightening-takes': { bolts: count(40) },
  'time-asked': { bolts: count(40), passes: count(4) },
  'angle-swings': { degrees: degrees(45) },
  'bolt-partly': { degrees: degrees(45), left: degrees(45) },
  'confirm-adapter': { length: digits(2, 'in') },
  'wait-for': { left: TEN_MINUTES },
  'timer-running': { left: TEN_MINUTES },
  'timer-runs': { left: TEN_MINUTES },
  'did-timer': { length: duration(9_000_000) },
  'angle-so-far': { degrees: digits(45, 'deg'), left: degrees(45) },
  'angle-heard': { degrees: digits(90, 'deg') },
  'angle-short': { degrees: degrees(45), left: degrees(45) },
  'shown-swing': { left: degrees(45) },
  'whole-pass': { value: replies([reply('torque-is', { value: FORTY })]) },
  'reading-out-of-range': { value: digits(900, 'mm') },
  'confirm-reading': { value: digits(0.25, 'mm') },
  'taken-back': { what: replies([BOLT_SEVEN_DONE]) },
  'undo-blocked': { what: replies([BOLT_SEVEN_DONE]) },
};

/** A reply with likely values in all its slots. */
export function sampleOf(code: ReplyCode, slots: Readonly<Record<string, Said>> = {}): Reply {
  const values = REPLIES[code].map((slot): [string, Said] => {
    const value = slots[slot] ?? OTHERWISE[code]?.[slot] ?? USUAL[slot];
    if (!value) throw new Error(`no sample for the slot ${slot} of ${code}`);
    return [slot, value];
  });
  return { code, slots: Object.fromEntries(values) };
}
