import type { LiveGrammar, Manner } from './grammar';
import { firstSample } from './sample';

/** What can be said now: one sentence a command, the one worth teaching. */
export type WordsNow = { readonly rule: string; readonly manner: Manner; readonly example: string };

/** The first alternative of each live command with the first value in its slots, in the order offered. */
export const wordsNow = (live: LiveGrammar): readonly WordsNow[] =>
  live.commands.flatMap((command) => {
    const sample = firstSample(live, command);
    return sample ? [{ rule: command.rule, manner: command.manner, example: sample.words }] : [];
  });
