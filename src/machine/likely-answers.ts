import { decide } from '../core/job/decide/decide';
import type { Moment } from '../core/job/entry';
import type { Job } from '../core/job/job';
import type { LiveGrammar } from '../core/language/grammar';
import type { Reply } from '../core/phrasing/reply';
import type { DeskParts } from './desk-parts';
import { hearing } from './hearing';

/**
 * What the likeliest words would be answered with, were they said now, so that it can be rendered before they are.
 * Deciding changes nothing, and nothing is said of it.
 */
export function likelyAnswers(
  job: Job,
  live: LiveGrammar,
  { examples, interpret }: Pick<DeskParts, 'examples' | 'interpret'>,
  now: Moment,
): readonly (readonly Reply[])[] {
  return examples(job).flatMap((words) => {
    const what = hearing(interpret(live, words));
    return what.kind === 'command' ? [decide(job, what.command, now).replies] : [];
  });
}
