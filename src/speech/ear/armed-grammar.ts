import type { LiveGrammar, Manner, Meaning } from '../../core/language/grammar';
import type { RejectReason } from '../../core/ports';
import { FILLER_WORDS } from './filler';

/** What the ear needs of the language, so that it can be tried with a grammar of its own. */
export type EarLanguage = {
  readonly toJsgf: (
    live: LiveGrammar,
    options: {
      readonly filler: { readonly weight: number; readonly phones: readonly string[] } | null;
      readonly decoys: readonly string[];
    },
  ) => string;
  readonly interpret: (live: LiveGrammar, words: string) => Meaning;
  readonly extendable: (live: LiveGrammar, words: string) => boolean;
};

/** What some words are worth to the ear: how dearly they must be heard, or why they are nothing. */
export type Sense =
  | { readonly kind: 'command'; readonly manner: Manner; readonly number: boolean }
  | { readonly kind: 'nothing'; readonly why: RejectReason };

/** A grammar in the ear's own terms: text for the engine, and what the words it returns mean here. */
export type ArmedGrammar = {
  readonly revision: string;
  /** The grammar with a phone loop of this weight beside the commands. */
  readonly jsgf: (fillerWeight: number) => string;
  readonly senseOf: (words: string) => Sense;
  /** Whether some longer sentence begins with these words. */
  readonly extendable: (words: string) => boolean;
  /** Whether numbers can be said here, which are spoken with pauses. */
  readonly numbers: boolean;
};

/** Stray words that people say all day and that sound like commands: listed, they are recognised and refused. */
export type Decoys = readonly string[];

export function armedFor(live: LiveGrammar, language: EarLanguage, decoys: Decoys): ArmedGrammar {
  const isDecoy = new Set(decoys);
  return {
    revision: live.revision,
    jsgf: (weight) => language.toJsgf(live, { filler: { weight, phones: FILLER_WORDS }, decoys }),
    senseOf: (words) => senseOf(language.interpret(live, words), isDecoy.has(words)),
    extendable: (words) => language.extendable(live, words),
    numbers: live.commands.some(({ slots }) => Object.values(slots).some(({ kind }) => kind === 'reading')),
  };
}

/** The part of a live grammar that stays open while the voice speaks. */
export function stopsOnly(live: LiveGrammar): LiveGrammar {
  return { ...live, commands: live.commands.filter(({ manner }) => manner === 'stop') };
}

function senseOf(meaning: Meaning, decoy: boolean): Sense {
  switch (meaning.kind) {
    case 'command': {
      const number = Object.values(meaning.slots).some(({ kind }) => kind === 'reading');
      return { kind: 'command', manner: meaning.manner, number };
    }
    // The app can say why not ("there is no bolt forty"), but must be as sure as for a real one.
    case 'almost':
      return { kind: 'command', manner: 'progress', number: true };
    case 'ambiguous':
      return { kind: 'nothing', why: 'ambiguous' };
    case 'nothing':
      return { kind: 'nothing', why: decoy ? 'decoy' : 'not-a-command' };
  }
}
