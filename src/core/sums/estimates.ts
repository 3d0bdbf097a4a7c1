import {
  baseOf,
  inUnit,
  type Millimetres,
  type NewtonMetres,
  type Newtons,
  newtons,
  percent,
} from '../fastening/quantity';
import { TORQUE_COEFFICIENTS, tensionFrom, torqueFor } from '../fastening/short-torque';
import { ISO_898_1, proofLoad, SAE_J429, strengthOf, utilisation } from '../fastening/strength';
import { stressArea, type Thread } from '../fastening/thread';
import { threadNamed } from '../fastening/thread-named';
import { turnStretch } from '../fastening/turn-preload';
import type { Working } from '../fastening/working';
import { quantity, type Reply, replies, reply, type Said, terms } from '../phrasing/reply';
import type { Estimates, Fastening } from './estimate';
import { figure, howOf } from './worked';

/** A joint that comes apart again is often tightened to three quarters of proof (Shigley, ch. 8, from memory). */
const USUAL_SHARE = percent(75);

/** K from waxed to dry, as the sources of the table span it: one number would be a promise nobody can keep. */
const K = {
  least: Math.min(...TORQUE_COEFFICIENTS.map(({ least }) => least)),
  most: Math.max(...TORQUE_COEFFICIENTS.map(({ most }) => most)),
};

/** A joint three to ten times as stiff as its bolt covers most castings (Bickford, from memory). */
const STIFFER = { least: 3, most: 10 };

const NOT_POSSIBLE = [reply('sum-not-possible', {})];

export const ESTIMATES: Estimates = {
  torque: (bolt, share) => {
    const proof = proofOf(bolt);
    if (!proof) return NOT_POSSIBLE;
    const wanted = share ?? USUAL_SHARE;
    const found = torqueFor(newtons((proof.load * wanted) / 100), proof.thread.diameter, K);
    if (!found.ok) return NOT_POSSIBLE;
    const { least, most, workings } = found.value;
    return [
      reply('estimate-torque', {
        bolt: nameOf(bolt),
        least: torqueFigure(least, proof.thread),
        most: torqueFigure(most, proof.thread),
        share: quantity({ value: wanted, unit: '%' }),
      }),
      shownBy(proof.working, ...workings),
    ];
  },
  proof: (bolt) => {
    const proof = proofOf(bolt);
    if (!proof) return NOT_POSSIBLE;
    return [
      reply('estimate-proof', { bolt: nameOf(bolt), load: forceFigure(proof.load, proof.thread) }),
      shownBy(proof.working),
    ];
  },
  tension: (bolt, torque) => {
    const thread = threadNamed(bolt.thread);
    const base = baseOf(torque, 'torque');
    const found = thread.ok && base.ok ? tensionFrom(base.value, thread.value.diameter, K) : undefined;
    if (!thread.ok || !found?.ok) return NOT_POSSIBLE;
    const { least, most, workings } = found.value;
    const proof = proofOf(bolt);
    return [
      reply('estimate-tension', {
        torque: quantity(torque),
        least: forceFigure(least, thread.value),
        most: forceFigure(most, thread.value),
      }),
      ...(proof
        ? [
            reply('estimate-utilisation', {
              least: figure(utilisation(least, proof.load), '%', 0),
              most: figure(utilisation(most, proof.load), '%', 0),
            }),
          ]
        : []),
      shownBy(...(proof ? [proof.working] : []), ...workings),
    ];
  },
  stretch: (bolt, angle) => {
    const thread = threadNamed(bolt.thread);
    if (!thread.ok) return NOT_POSSIBLE;
    const [least, most] = [STIFFER.least, STIFFER.most].map((ratio) => turnStretch(thread.value.pitch, angle, ratio));
    if (!least?.ok || !most?.ok) return NOT_POSSIBLE;
    return [
      reply('estimate-stretch', {
        degrees: quantity({ value: angle, unit: 'deg' }),
        least: lengthFigure(least.value.stretch, thread.value),
        most: lengthFigure(most.value.stretch, thread.value),
      }),
      shownBy(least.value.working, most.value.working),
    ];
  },
};

type Proof = { readonly thread: Thread; readonly load: Newtons; readonly working: Working };

/** The proof load of a thread and a class or grade, where a table has it. */
function proofOf({ thread: name, grade }: Fastening): Proof | undefined {
  const thread = threadNamed(name);
  if (!thread.ok || grade === null) return undefined;
  const isClass = grade.startsWith('class ');
  const table = isClass ? ISO_898_1 : SAE_J429;
  const strength = strengthOf(table, isClass ? grade.slice('class '.length) : grade, thread.value.diameter);
  const found = strength.ok ? proofLoad(stressArea(thread.value), strength.value) : undefined;
  return found?.ok ? { thread: thread.value, ...found.value } : undefined;
}

/** "M10 class 10.9": the thread as designated, the kind of strength in words, and its number. */
function nameOf({ thread, grade }: Fastening): Said {
  const [kind, number] = grade?.split(' ') ?? [];
  return terms(kind === undefined ? thread : `${thread} {${kind}} ${number}`);
}

/** Inch threads in the units of their tables, metric ones in theirs. */
const torqueFigure = (torque: NewtonMetres, { form }: Thread) =>
  form === 'unified' ? figure(inUnit<'torque'>(torque, 'lbf·ft'), 'lbf·ft', 0) : figure(torque, 'N·m', 0);

const forceFigure = (force: Newtons, { form }: Thread) =>
  form === 'unified'
    ? figure(10 * Math.round(inUnit<'force'>(force, 'lbf') / 10), 'lbf', 0)
    : figure(force / 1000, 'kN', 1);

const lengthFigure = (length: Millimetres, { form }: Thread) =>
  form === 'unified' ? figure(inUnit<'length'>(length, 'thou'), 'thou', 0) : figure(length, 'mm', 2);

/** The maker's figure comes first, always; what is only shown is each formula with its figures and its source. */
const shownBy = (...workings: readonly Working[]): Reply =>
  reply('estimate-by', {
    how: replies(workings.map((working) => reply('estimate-how', howOf(working)))),
  });
