import { Howler } from 'howler';
import { fail, ok, type Result } from '../core/result';

// The one AudioContext of the page, shared by the microphone and everything we sound, so that both run on one clock. It
// is howler's. howler is kept from suspending it when idle, and from replacing it: its automatic unlock does so on a
// phone whose context is not at 44.1 kHz, and the microphone would be left behind in the old one.

export type AudioFault = { readonly code: 'audio-blocked' | 'audio-missing'; readonly detail: string };

/** A refused context is silent about it: `resume` just never settles. */
const RESUME_PATIENCE_MS = 1000;

let opened: AudioContext | null = null;
let volume = 1;

/** Opens the context, or wakes it. Call it from a tap or key: without one the browser keeps it suspended. */
export async function openAudio(): Promise<Result<AudioContext, AudioFault>> {
  const context = opened ?? firstContext();
  if (context === null) return fail({ code: 'audio-missing', detail: 'this browser has no Web Audio' });
  return (await wake(context)) ? ok(context) : fail({ code: 'audio-blocked', detail: `context is ${context.state}` });
}

/** The open context, or null before the first tap. It may still be suspended: see `wake`. */
export const audioContext = (): AudioContext | null => opened;

/** True once the context is running; tries to get it there first. */
export async function wake(context: AudioContext): Promise<boolean> {
  if (context.state === 'running') return true;
  const patience = new Promise<void>((resolve) => setTimeout(resolve, RESUME_PATIENCE_MS));
  await Promise.race([context.resume().catch(() => {}), patience]);
  return runs(context);
}

/** The node that every reply and earcon passes through, at the reply volume. Only after `openAudio`. */
export const replyBus = (): GainNode | null => (opened === null ? null : Howler.masterGain);

/** Lets a node hear all we sound: a meter, or a test. Returns the undoing. */
export function tapReplies(listener: AudioNode): () => void {
  const bus = replyBus();
  bus?.connect(listener);
  return () => bus?.disconnect(listener);
}

/** How loud we are, from 0 to 1. May be set before the context is open. */
export function setReplyVolume(wanted: number): void {
  volume = Math.min(1, Math.max(0, wanted));
  if (opened !== null) Howler.volume(volume);
}

/** How long a sound is still on its way when the context is done with it, in milliseconds; a Bluetooth speaker adds 200. */
export function outputTailMs(): number {
  if (opened === null) return 0;
  const seconds = opened.outputLatency || opened.baseLatency || 0;
  return Math.min(500, 1000 * seconds);
}

function firstContext(): AudioContext | null {
  Howler.autoSuspend = false;
  Howler.autoUnlock = false;
  Howler.volume(volume); // howler builds its context when it is first given something to do
  if (!Howler.usingWebAudio || !Howler.ctx) return null;
  opened = Howler.ctx;
  keepRunning(opened);
  return opened;
}

/** A locked screen or a phone call suspends the context; coming back or touching the page wakes it. */
function keepRunning(context: AudioContext): void {
  const again = (): void => {
    if (document.visibilityState === 'visible' && !runs(context)) void wake(context);
  };
  document.addEventListener('visibilitychange', again);
  document.addEventListener('pointerdown', again, { capture: true });
  document.addEventListener('keydown', again, { capture: true });
}

// A call, because the compiler believes that the state cannot change between two looks at it.
const runs = (context: AudioContext): boolean => context.state === 'running';
