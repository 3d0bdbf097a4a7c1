import type { Job } from '../../src/core/job/job';
import { passStatesOf, placeOf } from '../../src/core/job/place';
import { passIn, stepIn } from '../../src/core/job/plan';
import { expectedBolt } from '../../src/core/job/tightening';
import type { Pass, Step } from '../../src/core/procedure/procedure';

const SMALL = 'one two three four five six seven eight nine ten eleven twelve'.split(' ');
const TENS = ['', 'ten', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];

/** Numbers that the shipped demonstration slices need; anything else is a reason to choose another procedure. */
function spelled(n: number): string {
  const word = SMALL[n - 1] ?? (n % 10 === 0 ? TENS[n / 10] : undefined);
  if (!word) throw new Error(`no words for ${n}`);
  return word;
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
      if (place.part === 'set') return settingOf(pass);
      if (place.part === 'mark') return 'all marked';
      const bolt = expectedBolt(pass, passStatesOf(job, place.step).get(place.pass) ?? NOTHING_DONE);
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

const NOTHING_DONE = { setting: null, marked: false, bolts: new Map(), orderBroken: false, waited: false };

function settingOf(pass: Pass): string | null {
  return 'target' in pass ? `set at ${spelled(pass.target.value)}` : null;
}

function forStep(job: Job, { id, question }: Step): string {
  if (!question || job.answers.has(id)) return 'this step is done';
  const right = question.answers.find((one) => one.right)?.say[0];
  if (!right) throw new Error(`${id} asks something that has no right answer`);
  return `it reads ${right}`;
}
