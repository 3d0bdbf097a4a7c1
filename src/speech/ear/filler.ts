/** The 39 phones of the acoustic model (ARPAbet, without stress), in dictionary order. */
export const PHONES: readonly string[] =
  'AA AE AH AO AW AY B CH D DH EH ER EY F G HH IH IY JH K L M N NG OW OY P R S SH T TH UH UW V W Y Z ZH'.split(' ');

const PREFIX = 'ph_';

/** The word that stands for one bare phone: a loop of them absorbs speech that is no command. */
export const fillerWord = (phone: string): string => PREFIX + phone.toLowerCase();

/** The model's own words for noise and for garbled speech, which are no phones but belong to what is not a command. */
const NOISES = ['[NOISE]', '[SPEECH]'];

export const LOOP_WORDS: readonly string[] = [...PHONES.map(fillerWord), ...NOISES];

export const isFiller = (word: string): boolean => word.startsWith(PREFIX);
