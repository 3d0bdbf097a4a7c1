import type { RecogniserFault } from '../core/ports';
import { fail, ok, type Result } from '../core/result';

export type MicrophoneChoice = {
  /** Null lets the system choose. */
  readonly deviceId: string | null;
  /** Only for listening while the voice speaks: it colours the sound at all other times. */
  readonly echoCancellation: boolean;
};

export type MicrophoneFault = { readonly code: RecogniserFault; readonly detail: string };

export type Microphone = {
  readonly source: MediaStreamAudioSourceNode;
  readonly stream: MediaStream;
  /** What the track reports, which is not always what was asked. */
  readonly cancelsEcho: boolean;
  readonly label: string;
  /** The one that was chosen is not there, and the machine's own choice is open in its place. */
  readonly standsIn: boolean;
  readonly close: () => void;
};

/** Told when the track ends for good, when the system mutes it, and when a muted one sounds again. */
export type MicrophoneWatch = {
  readonly ended: (detail: string) => void;
  readonly muted: (detail: string) => void;
  readonly back: () => void;
};

/**
 * Opens the microphone with the browser's own processing off: automatic gain drives speech into clipping and pumps
 * silence up until it is taken for words, and the ear denoises for itself.
 */
export async function openMicrophone(
  context: AudioContext,
  choice: MicrophoneChoice,
  watch: MicrophoneWatch,
): Promise<Result<Microphone, MicrophoneFault>> {
  const devices = navigator.mediaDevices;
  if (!devices) return fail({ code: 'microphone-missing', detail: 'this page is not in a secure context' });
  try {
    const { stream, standsIn } = await streamFor(devices, choice);
    const [track] = stream.getAudioTracks();
    if (!track) return fail({ code: 'microphone-missing', detail: 'the stream has no audio track' });
    track.onended = () => watch.ended('the microphone was unplugged or taken away');
    track.onmute = () => watch.muted('the microphone was muted by the system');
    track.onunmute = watch.back;
    const source = context.createMediaStreamSource(stream);
    const close = (): void => {
      track.onended = track.onmute = track.onunmute = null;
      source.disconnect();
      track.stop();
    };
    return ok({
      source,
      stream,
      cancelsEcho: track.getSettings().echoCancellation === true,
      label: track.label,
      standsIn,
      close,
    });
  } catch (error) {
    return fail(faultOf(error));
  }
}

/** A chosen microphone that is gone is no reason to be deaf: then the machine chooses. */
async function streamFor(
  devices: MediaDevices,
  choice: MicrophoneChoice,
): Promise<{ readonly stream: MediaStream; readonly standsIn: boolean }> {
  try {
    return { stream: await devices.getUserMedia({ audio: constraintsFor(choice) }), standsIn: false };
  } catch (error) {
    if (choice.deviceId === null || nameOf(error) !== 'OverconstrainedError') throw error;
    const audio = constraintsFor({ ...choice, deviceId: null });
    return { stream: await devices.getUserMedia({ audio }), standsIn: true };
  }
}

function constraintsFor({ deviceId, echoCancellation }: MicrophoneChoice): MediaTrackConstraints {
  return {
    ...(deviceId === null ? {} : { deviceId: { exact: deviceId } }),
    echoCancellation,
    autoGainControl: false,
    noiseSuppression: false,
    channelCount: 1,
  };
}

/** The names are those of the Media Capture and Streams specification (W3C), under getUserMedia. */
function faultOf(error: unknown): MicrophoneFault {
  const name = nameOf(error);
  const detail = String(error);
  if (name === 'NotAllowedError' || name === 'SecurityError') return { code: 'microphone-refused', detail };
  if (name === 'NotFoundError' || name === 'OverconstrainedError') return { code: 'microphone-missing', detail };
  return { code: 'microphone-lost', detail };
}

/** By its name alone: an OverconstrainedError is a DOMException only in some browsers. */
const nameOf = (error: unknown): string =>
  typeof error === 'object' && error !== null && 'name' in error ? String(error.name) : '';
