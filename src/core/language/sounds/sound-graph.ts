import type { Phrase } from '../grammar';
import { phraseGraph } from '../word-graph';
import { type Lexicon, pronunciations } from './lexicon';
import type { Phone } from './sounds';

/** A sound of a sentence: a phone, or a whole slot whose content is compared elsewhere. */
export type Sound =
  | { readonly kind: 'phone'; readonly phone: Phone }
  | { readonly kind: 'slot'; readonly name: string };

/** One step; `word` is set on the first sound of each word. */
type SoundStep = { readonly to: number; readonly sound: Sound; readonly word: string };

/** Every way a phrase can sound: all sentences, all pronunciations. State 0 is the start. */
export type SoundGraph = {
  readonly steps: readonly (readonly SoundStep[])[];
  readonly ends: ReadonlySet<number>;
};

/** Words without a pronunciation are left out, with the sentences they are in; `unpronounceable` reports them. */
export function soundGraph(phrase: Phrase, rule: (name: string) => Phrase, lexicons: readonly Lexicon[]): SoundGraph {
  const { states } = phraseGraph(phrase, rule);
  const steps: SoundStep[][] = states.map(() => []);
  for (const [from, { next }] of states.entries())
    for (const [word, to] of next)
      for (const sounds of soundsOf(word, lexicons)) {
        let at = from;
        for (const [index, sound] of sounds.entries()) {
          const target = index === sounds.length - 1 ? to : steps.push([]) - 1;
          steps[at]?.push({ to: target, sound, word: index === 0 ? word : '' });
          at = target;
        }
      }
  const ends = new Set([...states.keys()].filter((state) => states[state]?.isEnd));
  return { steps, ends };
}

/** Stands for a slot among the words of a phrase. No recogniser word looks like this. */
export const slotWord = (name: string): string => `<${name}>`;

function soundsOf(word: string, lexicons: readonly Lexicon[]): readonly (readonly Sound[])[] {
  const slot = /^<(.+)>$/.exec(word)?.[1];
  if (slot !== undefined) return [[{ kind: 'slot', name: slot }]];
  return pronunciations(word, lexicons).map((phones) => phones.map((phone) => ({ kind: 'phone', phone })));
}
