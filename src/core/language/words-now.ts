import type { LiveGrammar, Manner } from './grammar';
import { firstSample } from './sample';
import { sentenceForm } from './sentence-form';

/** What can be said now: one sentence a command, the one worth teaching. */
export type WordsNow = {
  readonly rule: string;
  readonly manner: Manner;
  readonly example: string;
  /** The same as it is shown: an answer is left open, or it would be put into somebody's mouth. */
  readonly shown: string;
};

/** What stands in a sentence where somebody has to find the words. */
export const GAP = '…';

/** The first alternative of each live command with the first value in its slots, in the order offered. */
export const wordsNow = (live: LiveGrammar): readonly WordsNow[] =>
  live.commands.flatMap((command) => {
    const sample = firstSample(live, command);
    if (!sample) return [];
    const { rule, manner } = command;
    const shown = 'answer' in command.slots ? withGaps(sentenceForm(live, command)) : sample.words;
    return [{ rule, manner, example: sample.words, shown }];
  });

/** A sentence with its blanks left open. */
const withGaps = (form: readonly unknown[]): string =>
  form.map((part) => (typeof part === 'string' ? part : GAP)).join(' ');
