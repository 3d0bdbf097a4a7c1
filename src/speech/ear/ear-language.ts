import type { Tongue } from '../../core/tongue';
import type { EarLanguage } from './messages';

/** A language as the decoder takes it: phones of one pronunciation in one string. */
export const earLanguage = ({
  model,
  lexicon,
  profile,
}: Pick<Tongue, 'model' | 'lexicon' | 'profile'>): EarLanguage => ({
  model,
  stray: profile.stray,
  lexicon: new Map([...lexicon].map(([word, all]) => [word, all.map((phones) => phones.join(' '))])),
});
