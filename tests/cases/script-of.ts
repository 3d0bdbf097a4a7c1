import { openWorkshop } from '../../src/cli/workshop';
import { type Command, command } from '../../src/core/job/command';
import type { Job } from '../../src/core/job/job';
import { limitOf } from '../../src/core/job/limit';
import { offersOf } from '../../src/core/job/offers';
import { nextReading, placeOf } from '../../src/core/job/place';
import { stepIn } from '../../src/core/job/plan';
import type { Tongue } from '../../src/core/tongue';
import { typedRecogniser } from '../../src/speech/typed';
import { spelled } from '../browser/next-words';
import { wayForward } from '../machine/way-forward';

/** A job with a thousand turns more than the longest shipped one has is going round in circles. */
const MOST_TURNS = 2_000;

/** What somebody who does everything right says from the first step to the closed record, with pauses where something must wait. */
export async function scriptOf(file: string, tongue: Tongue): Promise<readonly string[]> {
  let ms = 0;
  const clock = { wall: () => 1_700_000_000_000 + ms, mono: () => ms };
  const opened = await openWorkshop(file, tongue, typedRecogniser(), clock);
  if (!opened.ok) throw new Error(JSON.stringify(opened.error));
  const desk = opened.value;
  const lines: string[] = [];
  while (desk.job.status !== 'closed') {
    if (lines.length > MOST_TURNS) throw new Error(`no end: ${lines.slice(-5).join(' / ')}`);
    ms += 20_000;
    const before = desk.job;
    const words = wordsFor(likely(before, wayForward(before)), before, tongue);
    desk.type(words);
    await desk.idle();
    lines.push(words);
    if (desk.job !== before) continue;
    // It was refused, so that something has to wait first.
    if (lines.at(-2) === '+ 48 h') throw new Error(`stuck at "${words}": ${desk.snapshot.said?.shown}`);
    ms += 48 * 3_600_000;
    lines.splice(-1, 1, '+ 48 h');
  }
  return lines;
}

/** A reading well inside its limit, where there is one: nobody measures nought. */
function likely(job: Job, wanted: Command): Command {
  const place = placeOf(job);
  const next = place.kind === 'step' ? nextReading(job, place.step) : undefined;
  if (wanted.rule !== 'measured' || place.kind !== 'step' || !next) return wanted;
  const limit = limitOf(job.plan.procedure, stepIn(job.plan, place.step).step);
  const least = limit?.least?.value ?? next.least;
  const most = limit?.most?.value ?? Math.min(next.most, 4 * Math.max(least, 0.01));
  const value = Number(((least + most) / 2).toFixed(next.decimals));
  return command('measured', { reading: { kind: 'reading', value, unit: null } });
}

/** The first likely sentence that means the command here. */
function wordsFor(wanted: Command, job: Job, tongue: Tongue): string {
  const live = tongue.liveGrammar(offersOf(job), 'script');
  const found = candidates(wanted, job, tongue).find((words) => {
    const meaning = tongue.interpret(live, words);
    return meaning.kind === 'command' && meaning.rule === wanted.rule && fits(wanted, meaning.slots);
  });
  if (found === undefined) throw new Error(`nothing says ${JSON.stringify(wanted)}`);
  return found;
}

/** The numbers must be those; an option may be named by any of its names. */
const fits = (wanted: Command, slots: Command['slots']): boolean =>
  Object.entries(wanted.slots).every(([slot, value]) => {
    const other = slots[slot];
    if (value.kind === 'option') return other?.kind === 'option' && other.id === value.id;
    return other && 'value' in other && 'value' in value && other.value === value.value;
  });

function candidates({ rule, slots }: Command, job: Job, tongue: Tongue): readonly string[] {
  const [slot] = Object.values(slots);
  if (slot?.kind === 'option') return optionWords(rule, slot.id, job);
  const number = slot && 'value' in slot ? said(slot.value) : '';
  return [
    ...(tongue.teaching(job).get(rule) === undefined || number !== '' ? [] : [tongue.teaching(job).get(rule) ?? '']),
    `bolt ${number} done`,
    `set at ${number}`,
    `reading ${number}`,
    `the mark points at ${number} o'clock`,
    'this step is done',
    'go ahead anyway',
    'slacken them all',
  ];
}

function optionWords(rule: string, id: string, job: Job): readonly string[] {
  if (rule === 'answer') {
    const place = [...job.plan.steps.values()].flatMap(({ step }) => step.question?.answers ?? []);
    return place.filter((answer) => answer.id === id).flatMap(({ say }) => say.map((words) => `it reads ${words}`));
  }
  const names = [...job.plan.procedure.looseEnds.values()].filter((end) => end.id === id).map(({ say }) => say);
  return names.flatMap((say) => [`${say} is back on`, `refitted ${say}`]);
}

/** A number as a mechanic says it: decimals digit by digit behind the point. */
function said(value: number): string {
  const [whole = '0', decimals = ''] = String(value).split('.');
  const digits = [...decimals].map((digit) => (digit === '0' ? 'zero' : spelled(Number(digit))));
  return [whole === '0' ? 'zero' : spelled(Number(whole)), ...(digits.length > 0 ? ['point', ...digits] : [])].join(
    ' ',
  );
}
