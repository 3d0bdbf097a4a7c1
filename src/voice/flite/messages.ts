import type { FliteFault, Rendering, Utterance } from './flite';

/** What crosses to and from the voice worker. Types only: both sides import this and neither imports the other. */
export type ToVoiceWorker =
  | { readonly type: 'load'; readonly url: string }
  | { readonly type: 'render'; readonly id: number; readonly utterance: Utterance }
  | { readonly type: 'ping' };

export type LoadFault = 'voice-not-found' | 'voice-not-wasm';

export type FromVoiceWorker =
  | { readonly type: 'ready'; readonly msToLoad: number }
  | { readonly type: 'load-failed'; readonly code: LoadFault; readonly detail: string }
  | { readonly type: 'rendered'; readonly id: number; readonly rendering: Rendering }
  | { readonly type: 'failed'; readonly id: number; readonly code: FliteFault['code']; readonly detail: string }
  | { readonly type: 'pong' };
