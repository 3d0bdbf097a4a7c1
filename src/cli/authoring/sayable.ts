import { revisionOf } from '../../core/job/revision';
import type { LiveGrammar, Manner } from '../../core/language/grammar';
import { samples } from '../../core/language/sample';
import type { Tongue } from '../../core/tongue';
import type { ReachedPlace } from './places';

/** One command that can be said at a place, with a few of its sentences, the one worth teaching first. */
export type Sayable = { readonly rule: string; readonly manner: Manner; readonly examples: readonly string[] };

export const grammarAt = ({ offers, job }: ReachedPlace, tongue: Tongue): LiveGrammar =>
  tongue.liveGrammar(offers, revisionOf(job));

/** What can be said at a place, in the order it is offered. */
export function sayableAt(place: ReachedPlace, tongue: Tongue, sentences = 3): readonly Sayable[] {
  const live = grammarAt(place, tongue);
  const taught = tongue.examples(live);
  const spread = samples(live, live.commands.length * sentences);
  return live.commands.map(({ rule, manner }) => {
    const more = spread.flatMap(({ words, meaning }) =>
      meaning.kind === 'command' && meaning.rule === rule ? [words] : [],
    );
    const all = [...new Set([taught.get(rule) ?? '', ...more])].filter((words) => words !== '');
    return { rule, manner, examples: all.slice(0, sentences) };
  });
}
