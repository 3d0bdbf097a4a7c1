import { assertNever } from '../../result';
import type { LiveCommand, LiveGrammar, Manner, Phrase } from '../grammar';
import { setOf } from '../numbers/number-set';
import { restricted } from '../numbers/restrict';
import { VOID } from '../phrase';
import { NUMBER_RULE } from '../slots';
import { nameTag, readTag } from '../tags';
import type { Lexicon } from './lexicon';
import { type Nearest, nearest } from './nearest';
import { type SoundGraph, slotWord, soundGraph } from './sound-graph';

/** Two things that can be said now, mean different things and sound alike. */
export type Confusion = {
  readonly a: { readonly rule: string; readonly words: string };
  readonly b: { readonly rule: string; readonly words: string };
  /** Weighted edit distance; one unit is a phone with nothing in common. */
  readonly distance: number;
  /** Set where the two are the same command with another value in this slot. */
  readonly slot: string | undefined;
  readonly stakes: Stakes;
};

/**
 * What one heard for the other does. `none`: both only ask or stop. `read-back`: whatever is changed is read back and
 * confirmed first. `acts`: something is changed at once, so the two must be kept apart by wording or by an echo.
 */
export type Stakes = 'none' | 'read-back' | 'acts';

/** Nearer than this, two phrases need other words or a read-back: about one clear phone, or two weak ones. */
export const TOO_CLOSE = 1.2;

/**
 * Looks for confusions in live grammars; made once, it remembers pairs it has compared, so that a walk over all
 * states of a procedure compares each pair of phrases once.
 *
 * Commands are compared with their slots as single sounds, equal to slots with the same content; the values of a slot
 * are compared with each other. Readings are not: they are read back digit by digit, since teens and tens of any
 * range sound alike.
 */
export function confusionFinder(lexicons: readonly Lexicon[]): (live: LiveGrammar) => readonly Confusion[] {
  const graphs = new Map<string, SoundGraph>();
  const pairs = new Map<string, Nearest | undefined>();

  const graphOf = ({ key, phrase }: Sounding, live: LiveGrammar): SoundGraph => {
    const graph = graphs.get(key) ?? soundGraph(phrase(), (name) => live.parts[name] ?? VOID, lexicons);
    graphs.set(key, graph);
    return graph;
  };
  const compared = (live: LiveGrammar, a: Sounding, b: Sounding): Nearest | undefined => {
    const key = `${a.key}\n${b.key}`;
    if (!pairs.has(key)) pairs.set(key, nearest(graphOf(a, live), graphOf(b, live), TOO_CLOSE));
    return pairs.get(key);
  };

  return (live) => {
    const carriers = live.commands.map((command) => sounding(carrier(command.phrase, live)));
    const betweenCommands = pairsOf(live.commands).flatMap(([[indexA, a], [indexB, b]]) => {
      const [one, other] = [carriers[indexA], carriers[indexB]];
      const near = one && other && compared(live, one, other);
      if (!near) return [];
      const words = { a: { rule: a.rule, words: near.a }, b: { rule: b.rule, words: near.b } };
      return [{ ...words, distance: near.distance, slot: undefined, stakes: stakesOf([a.manner, b.manner]) }];
    });
    const betweenValues = live.commands.flatMap(({ rule, manner, slots }) =>
      Object.entries(slots).flatMap(([slot, domain]) =>
        pairsOf(valuePhrases(live, slot, domain)).flatMap(([[, a], [, b]]) => {
          const near = compared(live, a, b);
          if (!near) return [];
          const words = { a: { rule, words: near.a }, b: { rule, words: near.b } };
          return [{ ...words, distance: near.distance, slot, stakes: stakesOf([manner]) }];
        }),
      ),
    );
    return [...betweenCommands, ...betweenValues];
  };
}

/** A phrase under a key by which it is known again in another state. */
type Sounding = { readonly key: string; readonly phrase: () => Phrase };

const sounding = (phrase: Phrase): Sounding => ({ key: JSON.stringify(phrase), phrase: () => phrase });

function stakesOf(manners: readonly Manner[]): Stakes {
  if (manners.includes('progress')) return 'acts';
  return manners.includes('critical') ? 'read-back' : 'none';
}

function pairsOf<T>(all: readonly T[]): readonly (readonly [readonly [number, T], readonly [number, T]])[] {
  return all.flatMap((a, indexA) =>
    all.slice(indexA + 1).map(
      (b, offset) =>
        [
          [indexA, a],
          [indexA + 1 + offset, b],
        ] as const,
    ),
  );
}

/** A command with each slot as one word, named after what can fill it: numbers are like numbers, options like options. */
function carrier(phrase: Phrase, live: LiveGrammar): Phrase {
  switch (phrase.kind) {
    case 'seq':
    case 'oneOf':
      return { ...phrase, parts: phrase.parts.map((part) => carrier(part, live)) };
    case 'optional':
    case 'repeat':
      return { ...phrase, part: carrier(phrase.part, live) };
    case 'tagged': {
      if (readTag(phrase.tag)?.kind !== 'slot') return carrier(phrase.part, live);
      const isNamed = phrase.part.kind === 'rule' && namesIn(live, phrase.part.name).length > 0;
      return { kind: 'word', text: slotWord(isNamed ? 'option' : 'number') };
    }
    case 'rule':
      return carrier(live.parts[phrase.name] ?? VOID, live);
    case 'word':
    case 'null':
    case 'void':
      return phrase;
    default:
      return assertNever(phrase);
  }
}

/** The alternatives of a part that are named things. */
function namesIn(live: LiveGrammar, part: string): readonly Phrase[] {
  const phrase = live.parts[part] ?? VOID;
  const alternatives = phrase.kind === 'oneOf' ? phrase.parts : [phrase];
  return alternatives.filter((one) => one.kind === 'tagged' && readTag(one.tag)?.kind === 'name');
}

function valuePhrases(live: LiveGrammar, slot: string, domain: LiveCommand['slots'][string]): readonly Sounding[] {
  const rule = (name: string): Phrase => live.parts[name] ?? VOID;
  switch (domain.kind) {
    case 'integers':
      return domain.values.map((value) => ({
        key: `number ${value}`,
        phrase: () => restricted(rule(NUMBER_RULE), setOf([value], 0), rule),
      }));
    case 'options':
    case 'named': {
      const ids = domain.kind === 'named' ? domain.ids : domain.options.map(({ id }) => id);
      return Object.keys(live.parts)
        .filter((part) => part.startsWith(`${slot}-`))
        .flatMap((part) => namesIn(live, part))
        .filter((phrase) => phrase.kind === 'tagged' && ids.some((id) => nameTag(id) === phrase.tag))
        .map(sounding);
    }
    case 'reading':
      return [];
    default:
      return assertNever(domain);
  }
}
