import { spokenAmounts } from './amounts';
import type { SpeechWords } from './speech-words';
import { rewritten } from './word-table';

/**
 * The words of a document as a voice can say them: numbers, fractions, ranges and units in full, printed signs and
 * abbreviations by the tables of the language, initials spelled out. What comes out holds letters, spaces and
 * `. , ; : ? ! '` only, on one line.
 */
export function speakable(text: string, words: SpeechWords): string {
  const { beforeNumbers, betweenNumbers, ordinals, bareSymbols, abbreviations, signs } = words.documents;
  const plain = [beforeNumbers, betweenNumbers, ordinals, bareSymbols].reduce(
    (t, table) => rewritten(t, table),
    flat(text),
  );
  const said = [abbreviations, signs].reduce((t, table) => rewritten(t, table), spokenAmounts(plain, words));
  return tidied(initials(said));
}

/** Words that a voice reads wrongly, spelt so that it reads them rightly. For speech only. */
export const respelt = (spoken: string, words: SpeechWords): string => rewritten(spoken, words.documents.respelt, '');

/** One line, without control characters and quotation marks; printed fractions, groups of thousands and marks made plain. */
function flat(text: string): string {
  return text
    .replace(/(?<=\d)(?=[\u00bc-\u00be\u2150-\u215e])/g, ' ')
    .replace(/(?<=\d)[\u00a0\u2009\u202f](?=\d{3}(?!\d))/g, '')
    .normalize('NFKC')
    .replaceAll('\u2044', '/')
    .replace(/[\u2018\u2019]/g, "'")
    .replace(/(?<=\d[./]\d+)\s?(?:"|\u2032\u2032)/g, ' in')
    .replace(/["\u201c-\u201f\u00ab\u00bb]/g, '')
    .replace(/(?<=\d)x(?=\s)|(?<=\s)x(?=\d)/g, '×')
    .replace(/(?<![\d.,])\d{1,2}(?:,\d{1,2}){2,}(?![\d,])/g, (list) => list.replaceAll(',', ', '))
    .replace(/[\p{Cc}\p{Cf}\s]+/gu, ' ')
    .trim();
}

/** Letters that no mouth can read together are said one by one: "PCV". */
const initials = (text: string): string =>
  text.replace(/(?<!\p{L})[B-DF-HJ-NP-TV-XZ]{2,5}(?!\p{L})/gu, (letters) => [...letters].join(' '));

const tidied = (text: string): string =>
  text
    .replace(/\s+[-\u2010-\u2015\u2212]+\s+/g, ', ')
    .replace(/[()[\]]/g, ', ')
    .replace(/(?<!\p{L})'|'(?!\p{L})/gu, ' ')
    .replace(/[^\p{L}\p{M} .,;:?!']/gu, ' ')
    .replace(/\s+/g, ' ')
    .replace(/ (?=[.,;:?!])/g, '')
    .replace(/[.,;:?!]{2,}/g, (run) => strongest(run))
    .replace(/^[.,;:?!\s]+|[,;:\s]+$/g, '')
    .trim();

/** Of several stops in a row the one that ends most. */
const strongest = (run: string): string => [...'?!.;:,'].find((stop) => run.includes(stop)) ?? '';
