import type { Stop } from './mouth';

export type SystemUtterance = {
  readonly text: string;
  readonly rate: number;
  readonly voice: SpeechSynthesisVoice;
};

/** Some browsers drop an utterance handed over directly after `cancel`. */
const AFTER_CANCEL_MS = 50;
const BEGIN_WITHIN_MS = 2500;

/** The slowest a system voice may take, in milliseconds: about twice the ordinary pace, and two seconds to begin. */
const longestMs = ({ text, rate }: SystemUtterance): number => (90 * text.length) / rate + 2000;

/**
 * Speaks one utterance and tells how it ended: null, or what went wrong. The end may never come, so both beginning and
 * end have a limit. What is stuck in the system's queue from before is thrown out first.
 */
export function speakOnce(
  synth: SpeechSynthesis,
  what: SystemUtterance,
  ended: (trouble: string | null) => void,
): Stop {
  // Held here until the end: browsers let go of an utterance that only their own queue knows, and its events with it.
  const utterance = new SpeechSynthesisUtterance(what.text);
  utterance.rate = what.rate;
  utterance.voice = what.voice;
  utterance.lang = what.voice.lang;

  let over = false;
  const close = (): boolean => {
    const first = !over;
    over = true;
    clearTimeout(beginning);
    clearTimeout(begins);
    clearTimeout(ends);
    return first;
  };
  const end = (trouble: string | null): void => {
    if (!close()) return;
    if (trouble !== null) synth.cancel();
    ended(trouble);
  };

  utterance.onstart = () => clearTimeout(begins);
  utterance.onend = () => end(null);
  utterance.onerror = ({ error }) => end(error);

  const stuck = synth.speaking || synth.pending;
  if (stuck) synth.cancel();
  const delayMs = stuck ? AFTER_CANCEL_MS : 0;
  const beginning = setTimeout(() => synth.speak(utterance), delayMs);
  const begins = setTimeout(() => end('it did not begin'), delayMs + BEGIN_WITHIN_MS);
  const ends = setTimeout(() => end('it did not end'), delayMs + longestMs(what));

  return () => {
    if (close()) synth.cancel();
  };
}
