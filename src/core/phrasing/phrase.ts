import { assertNever } from '../result';
import { fill } from './fill';
import { boltsPhrase, joined } from './list-words';
import { digitsPhrase, figurePhrase, numberPhrase, type Phrased } from './quantity-words';
import type { Reply, Said } from './reply';
import type { ReplyBook } from './reply-book';
import { respelt, speakable } from './speakable';
import type { SpeechWords } from './speech-words';
import type { Noun } from './template';
import { withTerms } from './terms';
import { clockPhrase, durationPhrase } from './time-words';

export type { Phrased } from './quantity-words';

/** One reply in the words of a language: what is said and what is shown. */
export function phrase(book: ReplyBook, reply: Reply): Phrased {
  const { say, show } = book.replies[reply.code];
  const values = new Map(Object.entries(reply.slots).map(([slot, said]) => [slot, phraseValue(book, said)]));
  const at = (slot: string, noun: Noun | null): Phrased => {
    const value = values.get(slot) ?? NOTHING;
    return noun ? counted(reply.slots[slot], value, noun, book.words) : value;
  };
  return {
    spoken: voiced(
      fill(say, ({ slot, noun }) => at(slot, noun).spoken),
      book.words,
    ),
    shown: fill(show, ({ slot, noun }) => at(slot, noun).shown),
  };
}

/** Several replies after each other: sentences by a space, bare names as a list. Nothing for none. */
export function phraseAll(book: ReplyBook, replies: readonly Reply[]): Phrased {
  const all = replies.map((reply) => phrase(book, reply)).filter((p) => p.spoken !== '' || p.shown !== '');
  if (all.length > 1 && all.every((p) => !isSentence(p.shown))) return joined(all, book.words);
  return { spoken: all.map((p) => p.spoken).join(' '), shown: all.map((p) => p.shown).join(' ') };
}

/** Words to be said back stand in quotation marks, which are shown only; so are the spaces that French puts by them. */
const voiced = (text: string, words: SpeechWords): string =>
  respelt(
    text
      .replace(/[“”]|«\u00a0?|\u00a0?»|\u00a0(?=[;:!?])/g, '')
      .replace(/\u00a0/g, ' ')
      .replaceAll('’', "'"),
    words,
  );

const NOTHING: Phrased = { spoken: '', shown: '' };

const isSentence = (text: string): boolean => /[.?!…]\u00a0?["”»]?$/.test(text);

function phraseValue(book: ReplyBook, said: Said): Phrased {
  const { words } = book;
  switch (said.kind) {
    case 'text':
      return documentPhrase(said.text, words);
    case 'terms':
      return documentPhrase(withTerms(said.text, words.terms), words);
    case 'count':
      return numberPhrase(said.value, words);
    case 'digits':
      return digitsPhrase(said.value, said.unit, words);
    case 'quantity':
      return figurePhrase(said.quantity, words);
    case 'both': {
      const [first, second] = [phraseValue(book, said.first), phraseValue(book, said.second)];
      return {
        spoken: said.isAloud ? `${first.spoken}, ${second.spoken}` : first.spoken,
        shown: `${first.shown} (${second.shown})`,
      };
    }
    case 'degrees':
      return figurePhrase({ value: said.value, unit: 'deg' }, words);
    case 'duration':
      return durationPhrase(said.ms, words);
    case 'clock':
      return clockPhrase(said.hours, words);
    case 'list':
      return joined(
        said.items.map((item) => documentPhrase(item, words)),
        words,
      );
    case 'bolts':
      return boltsPhrase(said.numbers, words);
    case 'replies':
      return phraseAll(book, said.replies);
    default:
      return assertNever(said);
  }
}

const documentPhrase = (text: string, words: SpeechWords): Phrased => ({
  spoken: speakable(text, words),
  shown: text.replace(/[\p{Cc}\p{Cf}\s]+/gu, ' ').trim(),
});

function counted(said: Said | undefined, value: Phrased, noun: Noun, words: SpeechWords): Phrased {
  if (said?.kind !== 'count') return value;
  const isOne = words.numbers.singular === 'one' ? said.value === 1 : said.value < 2;
  const form = isOne ? noun.one : noun.many;
  if (said.value === 0) return { spoken: `${words.none} ${form}`, shown: `${words.none} ${form}` };
  return { spoken: `${value.spoken} ${form}`, shown: `${value.shown} ${form}` };
}
