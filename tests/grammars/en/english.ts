import { readFileSync } from 'node:fs';
import { languageUnderTest } from '../language';
import { SAMPLES } from './samples';

export { oneOfThese, readingOf, upTo, wellFormed } from '../language';

const folder = `${import.meta.dirname}/../../../grammars/en`;

export const grammarText = (file: string): { readonly file: string; readonly text: string } => ({
  file: `grammars/en/${file}`,
  text: readFileSync(`${folder}/${file}`, 'utf8'),
});

export const { book: english, offerOf, everything, hear } = languageUnderTest('en', SAMPLES);
