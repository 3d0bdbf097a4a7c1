import { describe } from '../../core/job/describe';
import type { Entry } from '../../core/job/entry';
import type { Plan } from '../../core/job/plan';
import type { RecordWords } from './record-lists';

export type TextOf = (entry: Entry) => string;

/** Entries in words, each put into words once: a long record asks for all of them again at every sentence. */
export function entryWords(plan: Plan, { show }: Pick<RecordWords, 'show'>): TextOf {
  const known = new WeakMap<Entry, string>();
  return (entry) => {
    const text = known.get(entry) ?? show([describe(plan, entry)]);
    known.set(entry, text);
    return text;
  };
}
