import { symbolOf, UNIT_NAMES } from '../fastening/unit';
import type { Field } from './field';
import type { DocumentWords, SpeechWords } from './speech-words';
import { wordTable } from './word-table';

/** Reads what documents print and voices cannot read; where an entry counts is decided here, its words in the file. */
export function readDocumentWords(documents: Field, units: SpeechWords['units']): DocumentWords {
  documents.only([
    'abbreviations',
    'before-numbers',
    'between-numbers',
    'ordinals',
    'signs',
    'after-unit',
    'not-inches',
    'respelt',
  ]);
  return {
    abbreviations: wordTable(dictionary(documents.key('abbreviations')), alone),
    beforeNumbers: wordTable(dictionary(documents.key('before-numbers')), (any) => `(?<![\\p{L}\\d])${any}(?=\\s*\\d)`),
    betweenNumbers: wordTable(dictionary(documents.key('between-numbers')), (any) => `(?<=\\d)\\s*${any}\\s*(?=\\d)`),
    ordinals: wordTable(dictionary(documents.key('ordinals')), alone),
    signs: wordTable(dictionary(documents.key('signs')), (any) => any),
    bareSymbols: wordTable(symbols(units), (any) => `(?<!\\d\\s*)${any}`),
    respelt: wordTable(dictionary(documents.key('respelt')), (any) => `(?<!\\p{L})${any}(?!\\p{L})`),
    afterUnit: new Set(documents.key('after-unit').texts()),
    notInches: new Set(documents.key('not-inches').texts()),
  };
}

const alone = (any: string): string => `(?<![\\p{L}\\d])${any}(?![\\p{L}\\d])`;

/** The symbols that cannot be words; as NFKC leaves them, which is how the text arrives. */
const symbols = (units: SpeechWords['units']): ReadonlyMap<string, string> =>
  new Map(
    UNIT_NAMES.map((name) => [symbolOf(name).normalize('NFKC'), units[name].many] as const).filter(([symbol]) =>
      /[^\w%° ]/.test(symbol),
    ),
  );

const dictionary = (field: Field): ReadonlyMap<string, string> =>
  new Map(field.keys().map((key) => [key, field.key(key).text()]));
