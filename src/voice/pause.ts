import type { SpeechRequest } from '../core/ports';
import { LISTENING_GAP_MS, LONGEST_STRETCH_MS } from './pieces';

/** What stands before the next piece of speech; all times in milliseconds. */
export type Before = {
  readonly priority: SpeechRequest['priority'];
  /** The first piece of its request. */
  readonly first: boolean;
  readonly pieceMs: number;
  /** How much we have said without a listening gap. */
  readonly stretchMs: number;
  readonly silentMs: number;
  /** How much longer a speaking person may keep us waiting. */
  readonly heldMs: number;
};

/**
 * How long to wait before the next piece, in milliseconds. The ear gets its gap when the piece would make the stretch
 * too long; a person who has begun to speak is let finish. The opening of urgent speech waits for neither.
 */
export function pauseBefore({ priority, first, pieceMs, stretchMs, silentMs, heldMs }: Before): number {
  if (priority === 'urgent' && first) return 0;
  const gapMs = stretchMs + pieceMs > LONGEST_STRETCH_MS && stretchMs > 0 ? LISTENING_GAP_MS - silentMs : 0;
  return Math.max(0, gapMs, priority === 'urgent' ? 0 : heldMs);
}
