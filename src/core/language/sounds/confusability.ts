import { assertNever } from '../../result';
import type { LiveCommand, LiveGrammar, Manner, Phrase } from '../grammar';
import { all } from '../jsgf/references';
import { setOf } from '../numbers/number-set';
import { restricted } from '../numbers/restrict';
import { VOID, withParts } from '../phrase';
import { NUMBER_RULE } from '../slots';
import { readTag, slotTag } from '../tags';
import type { Lexicon } from './lexicon';
import { type Nearest, nearest } from './nearest';
import { phoneDistance } from './phone-distance';
import { type SoundGraph, slotWord, soundGraph } from './sound-graph';
import type { Sounds } from './sounds';

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
export function confusionFinder(
  lexicons: readonly Lexicon[],
  sounds: Sounds,
): (live: LiveGrammar) => readonly Confusion[] {
  const phones = phoneDistance(sounds);
  const graphs = new Map<string, SoundGraph>();
  const pairs = new Map<string, Nearest | undefined>();

  const graphOf = ({ key, phrase }: Sounding, live: LiveGrammar): SoundGraph => {
    const graph = graphs.get(key) ?? soundGraph(phrase(), (name) => live.parts[name] ?? VOID, lexicons);
    graphs.set(key, graph);
    return graph;
  };
  const compared = (live: LiveGrammar, a: Sounding, b: Sounding): Nearest | undefined => {
    const key = `${a.key}\n${b.key}`;
    if (!pairs.has(key)) pairs.set(key, nearest(graphOf(a, live), graphOf(b, live), TOO_CLOSE, phones));
    return pairs.get(key);
  };

  const betweenCommands = (live: LiveGrammar): readonly Confusion[] => {
    const sounds = live.commands.map((command) => ({ command, sound: sounding(carrier(command.phrase, live)) }));
    return pairsOf(sounds).flatMap(([a, b]) => {
      const near = compared(live, a.sound, b.sound);
      return near ? [confusion(a.command, b.command, near, undefined)] : [];
    });
  };
  const betweenValues = (live: LiveGrammar): readonly Confusion[] =>
    live.commands.flatMap((command) =>
      Object.keys(command.slots).flatMap((slot) =>
        pairsOf(valuesOf(live, command, slot)).flatMap(([a, b]) => {
          const near = compared(live, a, b);
          return near ? [confusion(command, command, near, slot)] : [];
        }),
      ),
    );
  return (live) => [...betweenCommands(live), ...betweenValues(live)];
}

const confusion = (a: LiveCommand, b: LiveCommand, near: Nearest, slot: string | undefined): Confusion => ({
  a: { rule: a.rule, words: near.a },
  b: { rule: b.rule, words: near.b },
  distance: near.distance,
  slot,
  stakes: stakesOf([a.manner, b.manner]),
});

/** A phrase under a key by which it is known again in another state. */
type Sounding = { readonly key: string; readonly phrase: () => Phrase };

const sounding = (phrase: Phrase): Sounding => ({ key: JSON.stringify(phrase), phrase: () => phrase });

function stakesOf(manners: readonly Manner[]): Stakes {
  if (manners.includes('progress')) return 'acts';
  return manners.includes('critical') ? 'read-back' : 'none';
}

const pairsOf = <T>(some: readonly T[]): readonly (readonly [T, T])[] =>
  some.flatMap((a, index) => some.slice(index + 1).map((b) => [a, b] as const));

/** A command with each slot as one word, named after what can fill it: numbers are like numbers, options like options. */
function carrier(phrase: Phrase, live: LiveGrammar): Phrase {
  switch (phrase.kind) {
    case 'tagged': {
      if (readTag(phrase.tag)?.kind !== 'slot') return carrier(phrase.part, live);
      const isNamed = phrase.part.kind === 'rule' && namesIn(live, phrase.part.name).length > 0;
      return { kind: 'word', text: slotWord(isNamed ? 'option' : 'number') };
    }
    case 'rule':
      return carrier(live.parts[phrase.name] ?? VOID, live);
    default:
      return withParts(phrase, (part) => carrier(part, live));
  }
}

/** The alternatives of a part that are named things. */
function namesIn(live: LiveGrammar, part: string): readonly Phrase[] {
  const phrase = live.parts[part] ?? VOID;
  const alternatives = phrase.kind === 'oneOf' ? phrase.parts : [phrase];
  return alternatives.filter((one) => one.kind === 'tagged' && readTag(one.tag)?.kind === 'name');
}

/** The values a slot of a command can have, each as it sounds. */
function valuesOf(live: LiveGrammar, command: LiveCommand, slot: string): readonly Sounding[] {
  const rule = (name: string): Phrase => live.parts[name] ?? VOID;
  const domain = command.slots[slot];
  switch (domain?.kind) {
    case 'integers':
      return domain.values.map((value) => ({
        key: `number ${value}`,
        phrase: () => restricted(rule(NUMBER_RULE), setOf([value], 0), rule),
      }));
    case 'options':
    case 'named':
      return partsOf(command.phrase, slot).flatMap((part) => namesIn(live, part).map(sounding));
    case 'reading':
    case undefined:
      return [];
    default:
      return assertNever(domain);
  }
}

/** The parts that stand for a slot in a command: one, however often it is mentioned. */
const partsOf = (phrase: Phrase, slot: string): readonly string[] => [
  ...new Set(
    all(phrase).flatMap((one) =>
      one.kind === 'tagged' && one.tag === slotTag(slot) && one.part.kind === 'rule' ? [one.part.name] : [],
    ),
  ),
];
