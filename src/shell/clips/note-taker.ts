import type { LiveGrammar } from '../../core/language/grammar';
import type { RecogniserEvent } from '../../core/ports';
import type { Result } from '../../core/result';
import type { After } from '../../store/log-writer';
import type { Recorded, Recording } from '../sound/record-sound';
import type { SharedEar } from '../sound/shared-ear';
import type { SwitchedVoice } from '../sound/switched-voice';

/** A note may last a minute and two megabytes; it ends by itself after a silence. All in ms. */
const LONGEST_MS = 60_000;
const MOST_BYTES = 2_000_000;
const SILENCE_MS = 2500;
/** Nothing said for so long: there is no note. */
const PATIENCE_MS = 8000;
/** The prompt is over by then, or nothing will come. */
const PROMPT_MS = 6000;
/** So far above the floor, in dB, is somebody speaking. */
const SPEECH_DB = 9;

export type NoteEnd =
  | { readonly code: 'kept'; readonly note: Recorded; readonly isCut: boolean }
  | { readonly code: 'empty' | 'no-microphone' | 'failed' };

type NoteParts = {
  readonly ear: SharedEar;
  readonly voice: SwitchedVoice;
  readonly after: After;
  readonly now: () => number;
  readonly microphone: () => MediaStream | null;
  readonly record: (stream: MediaStream, mostBytes: number) => Recording;
  /** Only "stop" is heard while a note is spoken: no word of it may move the job. */
  readonly grammar: LiveGrammar;
};

/** Records a spoken note, from the end of the prompt until a silence, "stop", or the longest length. */
export async function takeNote(parts: NoteParts): Promise<NoteEnd> {
  await promptOver(parts);
  const stream = parts.microphone();
  if (!stream) return { code: 'no-microphone' };
  const recording = parts.record(stream, MOST_BYTES);
  const began = parts.now();
  let spokenAt: number | null = null;
  let isCut = false;
  const look = (event: RecogniserEvent): void => {
    const now = parts.now();
    if (event.type === 'heard') recording.stop();
    if (event.type === 'level' && event.db > event.floorDb + SPEECH_DB) spokenAt = now;
    const silentFor = now - (spokenAt ?? began);
    if (silentFor > (spokenAt === null ? PATIENCE_MS : SILENCE_MS)) recording.stop();
  };
  const giveBack = parts.ear.borrow(parts.grammar, look);
  const cancel = parts.after(LONGEST_MS, () => {
    isCut = true;
    recording.stop();
  });
  const done: Result<Recorded, unknown> = await recording.done;
  cancel();
  giveBack();
  if (!done.ok) return { code: 'failed' };
  return spokenAt === null || done.value.bytes.length === 0
    ? { code: 'empty' }
    : { code: 'kept', note: done.value, isCut: isCut || done.value.bytes.length > MOST_BYTES };
}

const promptOver = ({ voice, after }: NoteParts): Promise<void> =>
  new Promise((resolve) => {
    const end = (): void => {
      off();
      cancel();
      resolve();
    };
    const off = voice.on((event) => {
      if (event.type === 'quiet') end();
    });
    const cancel = after(PROMPT_MS, end);
  });
