import type { Listeners } from '../core/listeners';
import type { RecogniserEvent, RecogniserFault } from '../core/ports';
import { type Microphone, type MicrophoneChoice, openMicrophone } from './microphone';
import captureUrl from './worklet/capture.ts?worker&url';

export type MicrophoneFeed = {
  /** Opens the microphone if need be, and returns the port its blocks will arrive on. */
  readonly open: () => Promise<MessagePort | null>;
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
  choice: MicrophoneChoice,
  listeners: Listeners<RecogniserEvent>,
  back: () => void,
): MicrophoneFeed {
  let microphone: Microphone | null = null;
  let node: AudioWorkletNode | null = null;
  let module: Promise<void> | null = null;

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

  const onDevices = (): void => {
    if (!microphone) back();
  };

  const onState = (): void => {
    if (context.state === 'running') back();
    else if (microphone) failed('audio-blocked', `the audio context is ${context.state}`);
  };

  navigator.mediaDevices?.addEventListener('devicechange', onDevices);
  context.addEventListener('statechange', onState);

  const open = async (): Promise<MessagePort | null> => {
    if (context.state !== 'running') {
      failed('audio-blocked', 'the browser wants a tap before it lets sound in');
      return null;
    }
    if (!microphone) {
      const opened = await openMicrophone(context, choice, { ended, muted: lost, back });
      if (!opened.ok) {
        failed(opened.error.code, opened.error.detail);
        return null;
      }
      microphone = opened.value;
      module ??= context.audioWorklet.addModule(captureUrl);
      await module;
      node = new AudioWorkletNode(context, 'wrenchside-capture', {
        numberOfOutputs: 0,
        channelCount: 1,
        channelCountMode: 'explicit',
      });
      microphone.source.connect(node);
    }
    const { port1, port2 } = new MessageChannel();
    node?.port.postMessage(port1, [port1]);
    return port2;
  };

  return {
    open,
    cancelsEcho: () => microphone?.cancelsEcho ?? false,
    stream: () => microphone?.stream ?? null,
    close: () => {
      navigator.mediaDevices?.removeEventListener('devicechange', onDevices);
      context.removeEventListener('statechange', onState);
      close();
    },
  };
}
