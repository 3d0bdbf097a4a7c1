import { formFor } from './number-words';
import { figurePhrase, numberPhrase, type Phrased } from './quantity-words';
import { put, type SpeechWords } from './speech-words';

const SECOND = 1000;
const MINUTE = 60 * SECOND;

/**
 * A length of time, rounded up so that nobody is told a wait is over before it is: seconds below a minute, minutes and
 * tens of seconds below five, then whole minutes.
 */
export function durationPhrase(ms: number, words: SpeechWords): Phrased {
  const parts = durationParts(ms).map(({ value, unit }) => figurePhrase({ value, unit }, words));
  if (parts.length === 0) return { spoken: words.durations.none, shown: words.durations.none };
  return {
    spoken: parts.map((p) => p.spoken).join(words.durations.between),
    shown: parts.map((p) => p.shown).join(' '),
  };
}

function durationParts(ms: number) {
  const step = ms <= MINUTE ? SECOND : ms <= 5 * MINUTE ? 10 * SECOND : MINUTE;
  const seconds = (Math.ceil(Math.max(0, ms) / step) * step) / SECOND;
  const all = [
    { value: Math.floor(seconds / 3600), unit: 'h' },
    { value: Math.floor(seconds / 60) % 60, unit: 'min' },
    { value: seconds % 60, unit: 's' },
  ] as const;
  return all.filter((part) => part.value > 0);
}

/** A clock position in hours, on the hour or half past it: 4.5 is "half past four". */
export function clockPhrase(hours: number, words: SpeechWords): Phrased {
  const hour = numberPhrase(Math.floor(hours), words);
  const template = formFor(hour.shown, Number.isInteger(hours) ? words.clock.full : words.clock.half, words.numbers);
  return { spoken: put(template, { hour: hour.spoken }), shown: put(template, { hour: hour.shown }) };
}
