import type { RecogniserEvent } from '../../core/ports';
import type { Result } from '../../core/result';
import type { After } from '../../store/log-writer';
import type { Recorded, Recording } from '../sound/record-sound';
import type { SwitchedVoice } from '../sound/switched-voice';

/** A note may last a minute; it ends by itself after a silence. All in ms. */
export const LONGEST_MS = 60_000;
export const SILENCE_MS = 2500;
/** Nothing said for so long: there is no note. */
export const PATIENCE_MS = 8000;
/** The prompt is over by then, or nothing will come. */
const PROMPT_MS = 6000;
/** So far above the floor, in dB, is somebody speaking. */
const SPEECH_DB = 9;

export type NoteEnd =
  | { readonly code: 'kept'; readonly note: Recorded; readonly isCut: boolean }
  | { readonly code: 'empty' | 'no-microphone' | 'failed' };

type NoteParts = {
  readonly voice: Pick<SwitchedVoice, 'on'>;
  readonly after: After;
  readonly now: () => number;
  readonly microphone: () => MediaStream | null;
  /** Ends by itself where the note has grown too large. */
  readonly record: (stream: MediaStream) => Recording;
  /** Ends the note, at any time. */
  readonly signal: AbortSignal;
  /** Has the ear's events told to this one from now on. */
  readonly levels: (listener: (event: RecogniserEvent) => void) => void;
  /** The prompt is over: what is said now is in the note. */
  readonly began: () => void;
};

/** Records a spoken note, from the end of the prompt until a silence, the signal, or the longest length. */
export async function takeNote(parts: NoteParts): Promise<NoteEnd> {
  const { signal, now } = parts;
  await promptOver(parts);
  if (signal.aborted) return { code: 'empty' };
  const stream = parts.microphone();
  if (!stream) return { code: 'no-microphone' };
  const recording = parts.record(stream);
  parts.began();
  let quietSince = now();
  let isSpoken = false;
  let isEnded = false;
  const end = (): void => {
    isEnded = true;
    recording.stop();
  };
  signal.addEventListener('abort', end);
  parts.levels((event) => {
    if (event.type !== 'level') return;
    if (event.db > event.floorDb + SPEECH_DB) {
      quietSince = now();
      isSpoken = true;
    }
    if (now() - quietSince > (isSpoken ? SILENCE_MS : PATIENCE_MS)) end();
  });
  // While the app speaks, of a timer that is over, nobody can tell whether the person has ended.
  const off = parts.voice.on(({ type }) => {
    if (type === 'sound-off') quietSince = now();
  });
  let isTooLong = false;
  const cancel = parts.after(LONGEST_MS, () => {
    isTooLong = true;
    recording.stop();
  });
  const done: Result<Recorded, unknown> = await recording.done;
  cancel();
  off();
  signal.removeEventListener('abort', end);
  if (!done.ok) return { code: 'failed' };
  if (!isSpoken || done.value.bytes.length === 0) return { code: 'empty' };
  // What ended neither by a silence nor by the signal ended because it had grown too large, or its microphone went.
  return { code: 'kept', note: done.value, isCut: isTooLong || !isEnded };
}

const promptOver = ({ voice, after, signal }: NoteParts): Promise<void> =>
  new Promise((resolve) => {
    const end = (): void => {
      off();
      cancel();
      signal.removeEventListener('abort', end);
      resolve();
    };
    const off = voice.on((event) => {
      if (event.type === 'quiet') end();
    });
    const cancel = after(PROMPT_MS, end);
    signal.addEventListener('abort', end);
    if (signal.aborted) end();
  });
