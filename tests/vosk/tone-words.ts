/** Words a tone model knows, each a pair of pure tones. They are words of the English command grammar. */
export const TONE_WORDS: readonly string[] = [
  'at',
  'bolt',
  'correction',
  'done',
  'eight',
  'five',
  'next',
  'nine',
  'one',
  'repeat',
  'seven',
  'six',
  'step',
  'stop',
  'that',
  'torque',
  'two',
  'what',
];

/** A model's own word for whatever is none of its words: here a lone pair of tones that no word uses. */
export const OTHER = '[unk]';

/** The filter bank of the model: triangular bins on the mel scale, as in the Kaldi documentation of its features. */
export const BANK = { bins: 40, lowHz: 20, highHz: 7_600, sampleHz: 16_000 } as const;

/** Bins far enough apart that a tone in one leaves the others silent. The last is kept for `OTHER`. */
export const TONE_BINS = [10, 14, 18, 22, 26, 30, 34] as const;

const LAST = TONE_BINS.length - 1;

/** Which two tones a word is: an ordered pair of different ones, so six tones are enough for thirty words. */
export function tonesOf(word: string): readonly [number, number] {
  if (word === OTHER) return [LAST, LAST];
  const index = TONE_WORDS.indexOf(word);
  if (index < 0) throw new Error(`the tone model has no word "${word}"`);
  const first = index % LAST;
  return [first, (first + 1 + Math.floor(index / LAST)) % LAST];
}

const mel = (hz: number): number => 1127 * Math.log(1 + hz / 700);

/** The middle of a bin, in hertz. */
export function toneHz(tone: number): number {
  const step = (mel(BANK.highHz) - mel(BANK.lowHz)) / (BANK.bins + 1);
  const at = mel(BANK.lowHz) + ((TONE_BINS[tone] ?? 0) + 1) * step;
  return 700 * (Math.exp(at / 1127) - 1);
}
