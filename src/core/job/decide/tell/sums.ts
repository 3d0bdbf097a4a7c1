import { baseOf } from '../../../fastening/quantity';
import { isUnitName } from '../../../fastening/unit';
import { type Reply, reply, text } from '../../../phrasing/reply';
import type { Step } from '../../../procedure/procedure';
import { type Command, readingIn } from '../../command';
import { type Decision, refused, told } from '../../decision';
import type { Job } from '../../job';
import { coolantRule, readingsIn, readingsRules, sumStep } from '../../sums';

/** What the rules of a step make of its readings; nothing for a step without rules. */
export const sumsOf = (job: Job, step: Step): readonly Reply[] =>
  readingsRules(job, step).flatMap((rule) => rule.workOut(readingsIn(job, step.id), (id) => readingsIn(job, id)));

/** "Work it out": nothing is guessed for a reading that is missing. */
export function workOut(job: Job): Decision {
  const step = sumStep(job);
  if (step?.kind !== 'measure') return refused(reply('not-here', {}));
  const given = job.readings.get(step.id);
  const missing = step.readings.find(({ id }) => !given?.has(id));
  return missing ? told(reply('readings-left', { reading: text(missing.say) })) : told(...sumsOf(job, step));
}

/** What a coolant protects to, the mix for a cold, and what goes into the room there is. */
export function coolant(job: Job, c: Command): Decision {
  const rule = coolantRule(job);
  const share = valueIn(c, 'share', 'ratio');
  const cold = valueIn(c, 'cold', 'temperature');
  const room = valueIn(c, 'room', 'volume');
  if (rule && room !== undefined) return told(...rule.concentrate(room, share ?? null));
  if (rule && share !== undefined) return told(...rule.freezing(share));
  if (rule && cold !== undefined) return told(...rule.mixFor(cold));
  return refused(reply('not-here', {}));
}

const UNSAID = { ratio: '%', temperature: 'degC', volume: 'L' } as const;

/** A slot in the base unit. Minus is a word of the sentence: a cold is said without its sign. */
function valueIn<D extends keyof typeof UNSAID>(c: Command, slot: string, dimension: D) {
  const given = readingIn(c, slot);
  if (!given) return undefined;
  const unit = given.unit !== null && isUnitName(given.unit) ? given.unit : UNSAID[dimension];
  const found = baseOf({ value: slot === 'cold' ? -given.value : given.value, unit }, dimension);
  return found.ok ? found.value : undefined;
}
