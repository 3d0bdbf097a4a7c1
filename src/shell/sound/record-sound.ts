import { fail, ok, type Result } from '../../core/result';

export type Recorded = { readonly mime: string; readonly bytes: Uint8Array };

/** A recording under way. It ends when it is stopped or when a limit is reached. */
export type Recording = {
  readonly stop: () => void;
  readonly done: Promise<Result<Recorded, { readonly code: 'not-recorded'; readonly detail: string }>>;
};

/** Plain speech: a minute is a quarter of a megabyte. */
const BITS_PER_SECOND = 32_000;
const SLICE_MS = 500;

/** Records what the microphone gives, up to so many bytes. The stream belongs to others and is left open. */
export function recordSound(stream: MediaStream, mostBytes: number): Recording {
  const parts: Blob[] = [];
  let size = 0;
  let recorder: MediaRecorder;
  try {
    recorder = new MediaRecorder(stream, { audioBitsPerSecond: BITS_PER_SECOND });
    recorder.start(SLICE_MS);
  } catch (error) {
    return { stop: () => undefined, done: Promise.resolve(fail({ code: 'not-recorded', detail: String(error) })) };
  }
  const stop = (): void => {
    if (recorder.state !== 'inactive') recorder.stop();
  };
  const done: Recording['done'] = new Promise((resolve) => {
    recorder.ondataavailable = ({ data }) => {
      parts.push(data);
      size += data.size;
      if (size > mostBytes) stop();
    };
    // What was recorded until then comes with the stop that follows.
    recorder.onerror = (event) => {
      if (size === 0) resolve(fail({ code: 'not-recorded', detail: event.type }));
    };
    recorder.onstop = () => {
      const mime = recorder.mimeType === '' ? 'audio/webm' : recorder.mimeType;
      void new Blob(parts).arrayBuffer().then((bytes) => resolve(ok({ mime, bytes: new Uint8Array(bytes) })));
    };
  });
  return { stop, done };
}
