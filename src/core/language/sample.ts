import { holds, slotValues } from './domain';
import type { LiveCommand, LiveGrammar, Meaning } from './grammar';
import { VOID } from './phrase';
import { sentenceAt, sentenceCount } from './sentences';

/** A sentence that can be said now, and the meaning it must have: both come from the grammar, not from `interpret`. */
export type Sample = { readonly words: string; readonly meaning: Meaning };

/** Sentences of all live commands, spread over the alternatives and values of each; about `limit` of them, never more. */
export function samples(live: LiveGrammar, limit: number): readonly Sample[] {
  const share = Math.max(1, Math.floor(limit / Math.max(1, live.commands.length)));
  return live.commands.flatMap((command) => commandSamples(live, command, share)).slice(0, limit);
}

/** The first sentence of a command, in the order of the grammar, whose values lie in their domains. */
export function firstSample(live: LiveGrammar, command: LiveCommand): Sample | undefined {
  const count = Math.min(FAR_ENOUGH, countOf(live, command));
  for (let index = 0; index < count; index += 1) {
    const sample = sampleAt(live, command, index);
    if (sample) return sample;
  }
  return undefined;
}

// A wide range begins outside its domain for a few sentences at most: "zero" before a least value of a quarter.
const FAR_ENOUGH = 2000;

function commandSamples(live: LiveGrammar, command: LiveCommand, share: number): readonly Sample[] {
  const count = countOf(live, command);
  const picks = Math.min(share, count);
  const indices = Array.from({ length: picks }, (_, pick) => Math.floor((pick * count) / picks));
  const found = indices.flatMap((index) => sampleAt(live, command, index) ?? []);
  // Of a wide range every pick may lie outside the domain; a command that can be said has a sentence all the same.
  return found.length > 0 ? found : [firstSample(live, command) ?? []].flat();
}

const countOf = (live: LiveGrammar, command: LiveCommand): number =>
  sentenceCount(command.phrase, (name) => live.parts[name] ?? VOID);

/** Undefined where the phrase is wider than the domain, as it is for fractions in a wide range. */
function sampleAt(live: LiveGrammar, command: LiveCommand, index: number): Sample | undefined {
  const sentence = sentenceAt(command.phrase, index, (name) => live.parts[name] ?? VOID);
  const slots = slotValues(command, sentence.slots);
  if (Object.entries(slots).some(([slot, value]) => !holds(command.slots[slot], value))) return undefined;
  const { rule, manner } = command;
  return { words: sentence.words.join(' '), meaning: { kind: 'command', rule, manner, slots } };
}
