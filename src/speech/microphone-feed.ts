import type { Listeners } from '../core/listeners';
import type { RecogniserEvent, RecogniserFault } from '../core/ports';
import { type Microphone, type MicrophoneChoice, openMicrophone } from './microphone';
import captureUrl from './worklet/capture.ts?worker&url';

export type MicrophoneSetup = {
  /** Asked each time one is opened. */
  readonly choice: () => MicrophoneChoice;
  /** Told each time one is open: whether it stands in for the one that was chosen, which is not there. */
  readonly opened?: (standsIn: boolean) => void;
};

export type MicrophoneFeed = {
  /** Opens the microphone if need be, and returns the port its blocks will arrive on. */
  readonly open: () => Promise<MessagePort | null>;
  /** Another one was chosen: the one that is open is closed, and `back` is called. */
  readonly reopen: () => Promise<void>;
  readonly cancelsEcho: () => boolean;
  /** What the microphone gives, for whoever records it; null while none is open. */
  readonly stream: () => MediaStream | null;
  readonly close: () => void;
};

/**
 * The microphone and the audio-thread node behind it, in an audio context that others use too. Listeners are told when it
 * fails. `back` is called when something changed for the better: a device came, the system unmuted, the context runs again.
 */
export function microphoneFeed(
  context: AudioContext,
  { choice, opened }: MicrophoneSetup,
  listeners: Listeners<RecogniserEvent>,
  back: () => void,
): MicrophoneFeed {
  let microphone: Microphone | null = null;
  let node: AudioWorkletNode | null = null;
  let module: Promise<void> | null = null;
  let joining: Promise<boolean> | null = null;

  const close = (): void => {
    node?.disconnect();
    microphone?.close();
    node = null;
    microphone = null;
  };

  const failed = (code: RecogniserFault, detail: string): void => listeners.tell({ type: 'failed', code, detail });

  const lost = (detail: string): void => failed('microphone-lost', detail);

  const ended = (detail: string): void => {
    close();
    lost(detail);
  };

  const reopen = async (): Promise<void> => {
    await joining;
    if (gone.signal.aborted) return;
    close();
    back();
  };

  const onBetter = (): void => {
    if (!microphone && document.visibilityState === 'visible') back();
  };

  /** The chosen one may be plugged in again while another stands in for it. */
  const onDevices = async (): Promise<void> => {
    onBetter();
    if (!microphone?.standsIn) return;
    const inputs = await navigator.mediaDevices.enumerateDevices().catch(() => []);
    if (inputs.some(({ deviceId }) => deviceId === choice().deviceId) && microphone?.standsIn) await reopen();
  };

  const onState = (): void => {
    if (context.state === 'running') back();
    else if (microphone) failed('audio-blocked', `the audio context is ${context.state}`);
  };

  const gone = new AbortController();
  const { signal } = gone;
  navigator.mediaDevices?.addEventListener('devicechange', () => void onDevices(), { signal });
  // Who allows it again in the browser's or the system's settings comes back to the page, or is told of here.
  document.addEventListener('visibilitychange', onBetter, { signal });
  void navigator.permissions?.query({ name: 'microphone' }).then(
    (permission) => permission.addEventListener('change', onBetter, { signal }),
    () => undefined,
  );
  context.addEventListener('statechange', onState, { signal });

  /** False where there is no microphone to be had, or it went while it was being joined; listeners have been told. */
  const join = async (): Promise<boolean> => {
    const made = await openMicrophone(context, choice(), { ended, muted: lost, back });
    if (!made.ok) {
      failed(made.error.code, made.error.detail);
      return false;
    }
    if (gone.signal.aborted) {
      made.value.close();
      return false;
    }
    microphone = made.value;
    opened?.(made.value.standsIn);
    module ??= context.audioWorklet.addModule(captureUrl);
    try {
      await module;
    } catch (error) {
      module = null;
      close();
      failed('worker-crashed', String(error));
      return false;
    }
    if (microphone !== made.value) return false;
    node = new AudioWorkletNode(context, 'wrenchside-capture', {
      numberOfOutputs: 0,
      channelCount: 1,
      channelCountMode: 'explicit',
    });
    microphone.source.connect(node);
    return true;
  };

  const open = async (): Promise<MessagePort | null> => {
    if (context.state !== 'running') {
      failed('audio-blocked', 'the browser wants a tap before it lets sound in');
      return null;
    }
    // A headset that is plugged in is told of several times over; it is opened once.
    if (!node) {
      joining ??= join().finally(() => {
        joining = null;
      });
      if (!(await joining)) return null;
    }
    const { port1, port2 } = new MessageChannel();
    node?.port.postMessage(port1, [port1]);
    return port2;
  };

  return {
    open,
    reopen,
    cancelsEcho: () => microphone?.cancelsEcho ?? false,
    stream: () => microphone?.stream ?? null,
    close: () => {
      gone.abort();
      close();
    },
  };
}
