import type { RecogniserEvent, RecogniserFault } from '../core/ports';

/** The ear as far as a screen needs to know it. */
export type EarState = {
  readonly state: 'loading' | 'listening' | 'failed';
  readonly fault: RecogniserFault | null;
  readonly db: number;
  readonly floorDb: number;
  readonly clipped: boolean;
  readonly partial: string;
  readonly armed: string;
};

export const EAR_AT_FIRST: EarState = {
  state: 'loading',
  fault: null,
  db: -90,
  floorDb: -90,
  clipped: false,
  partial: '',
  armed: '',
};

export function earView(before: EarState, event: RecogniserEvent): EarState {
  switch (event.type) {
    case 'ready':
      return { ...before, state: 'listening', fault: null };
    case 'armed':
      return { ...before, armed: event.revision, partial: '' };
    case 'level':
      return { ...before, db: event.db, floorDb: event.floorDb, clipped: event.clipped };
    case 'partial':
      return { ...before, partial: event.words };
    case 'heard':
    case 'rejected':
      return { ...before, partial: '' };
    case 'failed':
      return { ...before, state: 'failed', fault: event.code };
  }
}

/** What is said about a fault of the ear. */
export function faultReply(code: RecogniserFault) {
  switch (code) {
    case 'microphone-refused':
    case 'microphone-missing':
    case 'microphone-lost':
    case 'audio-blocked':
      return code;
    default:
      return 'recogniser-failed' as const;
  }
}
