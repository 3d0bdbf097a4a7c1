import { type RuleName, SHOWING } from '../job/command';
import { integers, offer } from '../job/offers/domains';
import type { Offer } from '../language/grammar';
import type { Porch } from './porch';

/** Everything that makes sense to say while no job is open. None of it works on a job. */
export function porchOffers({ procedures, jobs, last, asked }: Porch): readonly Offer[] {
  const numbered = [
    ...(procedures.length > 0 ? [offer('begin-procedure', { line: numbersOf(procedures) })] : []),
    ...(jobs.length > 0 ? [offer('open-job', { line: numbersOf(jobs) })] : []),
  ];
  // A number that was heard wrongly is put right by saying it again.
  if (asked) return [...rules('confirm', 'cancel', ...ALWAYS), ...numbered];
  return [
    ...(last ? rules('carry-on', 'tell-brief') : []),
    ...numbered,
    ...rules(...(procedures.length > 0 ? (['show-around'] as const) : []), ...ALWAYS, ...SHOWING),
  ];
}

const ALWAYS: readonly RuleName[] = ['stop', 'say-again', 'tell-words', 'ears-off', 'ears-on', 'slower', 'faster'];

const rules = (...names: readonly RuleName[]): readonly Offer[] => names.map((rule) => offer(rule));

const numbersOf = (lines: readonly { readonly number: number }[]) => integers(lines.map(({ number }) => number));

/** Of the sentences that can be said here the few worth telling, the likeliest first. */
export function porchTaught(examples: ReadonlyMap<string, string>): readonly string[] {
  return TAUGHT.flatMap((rule) => examples.get(rule) ?? []).slice(0, 5);
}

const TAUGHT: readonly RuleName[] = [
  'confirm',
  'cancel',
  'carry-on',
  'tell-brief',
  'begin-procedure',
  'show-procedures',
  'show-around',
  'stop',
];
