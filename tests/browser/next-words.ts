import type { Job } from '../../src/core/job/job';
import { passStatesOf, placeOf } from '../../src/core/job/place';
import { passIn, stepIn } from '../../src/core/job/plan';
import { expectedBolt, passState } from '../../src/core/job/tightening';
import { isTimeAsked } from '../../src/core/job/time-gate';
import type { Pass, Step } from '../../src/core/procedure/procedure';

const SMALL = [
  ...['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve', 'thirteen'],
  ...['fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen'],
];
const TENS = ['twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];

/** A whole number from 1 to 999 as it is said. */
export function spelled(n: number): string {
  const hundreds = Math.floor(n / 100);
  const rest = n % 100;
  const tail = SMALL[rest - 1] ?? [TENS[Math.floor(rest / 10) - 2], SMALL[(rest % 10) - 1]].filter(Boolean).join(' ');
  return [hundreds > 0 ? `${SMALL[hundreds - 1]} hundred` : '', tail].filter(Boolean).join(' ');
}

/** What a mechanic who does everything right says next, or null where nothing is left to do. */
export function nextWords(job: Job): string | null {
  if (job.pending && job.pending.kind !== 'which-bolt') return 'agreed and confirmed';
  const place = placeOf(job);
  switch (place.kind) {
    case 'step':
      return forStep(job, stepIn(job.plan, place.step).step);
    case 'pass': {
      const pass = passIn(job.plan, place.step, place.pass);
      if (isTimeAsked(job)) return 'i have the time';
      if (place.part === 'set') return settingOf(pass);
      if (place.part === 'mark') return 'all marked';
      const bolt = expectedBolt(pass, passState(passStatesOf(job, place.step), place.pass));
      return bolt === undefined ? null : `bolt ${spelled(bolt)} done`;
    }
    case 'paused':
      return 'i am back';
    case 'closing':
      return 'close the job';
    case 'closed':
      return null;
  }
}

function settingOf(pass: Pass): string | null {
  if ('target' in pass) return `set at ${spelled(pass.target.value)}`;
  return 'degrees' in pass ? `set at ${spelled(pass.degrees)}` : null;
}

function forStep(job: Job, { id, question }: Step): string {
  if (!question || job.answers.has(id)) return 'this step is done';
  const right = question.answers.find((one) => one.right)?.say[0];
  if (!right) throw new Error(`${id} asks something that has no right answer`);
  return `it reads ${right}`;
}
