const PREFIX = 'ph_';

/** The word that stands for one bare phone: a loop of them absorbs speech that is no command. */
export const fillerWord = (phone: string): string => PREFIX + phone.toLowerCase();

/** Words for noise and for garbled speech, which are no phones but belong to what is not a command. Not every model has them. */
const NOISES = ['[NOISE]', '[SPEECH]'];

/** All words of the loop, for a model with these phones. */
export const loopWords = (phones: readonly string[], isKnown: (word: string) => boolean): readonly string[] => [
  ...phones.map(fillerWord),
  ...NOISES.filter(isKnown),
];

export const isFiller = (word: string): boolean => word.startsWith(PREFIX);
