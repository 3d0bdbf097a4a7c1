import type { Lexicon as Pronunciations } from '../../core/language/sounds/lexicon';
import type { Lexicon } from './messages';

/** Pronunciations as the decoder takes them: phones of one pronunciation in one string. */
export const earLexicon = (lexicon: Pronunciations): Lexicon =>
  new Map([...lexicon].map(([word, all]) => [word, all.map((phones) => phones.join(' '))]));
