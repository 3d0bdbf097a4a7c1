import { assertNever } from '../result';
import { holds, slotValues } from './domain';
import type { LiveCommand, LiveGrammar, Meaning, Phrase, SlotValue } from './grammar';
import { type Found, Matcher } from './match';
import { anyPhrase } from './slots';
import { spokenWords } from './spoken-words';

/**
 * The meaning of a whole utterance in a live grammar. Every word must belong to the command, and exactly one command
 * with one set of slot values may fit; anything else is not a command.
 */
export function interpret(live: LiveGrammar, text: string): Meaning {
  const words = spokenWords(live, text);
  if (words.length === 0) return { kind: 'nothing' };
  const meanings = new Map<string, Extract<Meaning, { kind: 'command' }>>();
  const matcher = new Matcher(live.parts, words, (_, phrase) => phrase);
  for (const command of live.commands)
    for (const { slots } of whole(matcher, command.phrase, words.length)) {
      const values = slotValues(command, slots);
      if (Object.entries(values).some(([slot, value]) => !holds(command.slots[slot], value))) continue;
      const { rule, manner } = command;
      meanings.set(JSON.stringify([rule, values]), { kind: 'command', rule, manner, slots: values });
    }
  const [only, ...others] = meanings.values();
  if (!only) return almost(live, words);
  if (others.length === 0) return only;
  return { kind: 'ambiguous', rules: [...new Set([only, ...others].map((meaning) => meaning.rule))] };
}

/** Whether some legal sentence begins with these words and goes on: then an early answer would be too early. */
export function extendable(live: LiveGrammar, text: string): boolean {
  const matcher = new Matcher(live.parts, spokenWords(live, text), (_, phrase) => phrase);
  for (const command of live.commands) {
    matcher.match(command.phrase, 0);
    if (matcher.wantsMore) return true;
  }
  return false;
}

/** The same shapes once more with any number in the slots, to say what was out of place. */
function almost(live: LiveGrammar, words: readonly string[]): Meaning {
  let domains: LiveCommand['slots'] = {};
  // One matcher for all commands, so that the numbers in the words are read once.
  const matcher = new Matcher(live.parts, words, (slot, phrase) => {
    const domain = domains[slot];
    return domain && domain.kind !== 'options' ? anyPhrase(slot, domain) : phrase;
  });
  for (const command of live.commands) {
    domains = command.slots;
    for (const { slots } of whole(matcher, command.phrase, words.length)) {
      const outside = Object.entries(slotValues(command, slots)).find(([slot, value]) => !holds(domains[slot], value));
      if (outside) return { kind: 'almost', rule: command.rule, slot: outside[0], given: given(outside[1]) };
    }
  }
  return { kind: 'nothing' };
}

const whole = (matcher: Matcher, phrase: Phrase, length: number): readonly Found[] =>
  matcher.match(phrase, 0).filter((found) => found.end === length);

function given(value: SlotValue): string {
  switch (value.kind) {
    case 'integer':
      return String(value.value);
    case 'reading':
      return value.unit === null ? String(value.value) : `${value.value} ${value.unit}`;
    case 'option':
      return value.id;
    default:
      return assertNever(value);
  }
}
