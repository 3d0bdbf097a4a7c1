import type { Degrees, Measured, Percent } from '../fastening/quantity';
import type { Reply } from '../phrasing/reply';

/** A fastener's thread and strength as a document or a person names them; without the strength only some can be told. */
export type Fastening = { readonly thread: string; readonly grade: string | null };

/**
 * Rough sums about a fastener, for understanding only: what is answered can be heard and read, and nothing of it goes
 * into an entry or a target. They come with the procedure, since nothing asks before one is read.
 */
export type Estimates = {
  /** The torque for a share of the proof load, on threads from waxed to dry. */
  readonly torque: (bolt: Fastening, share: Percent | null) => readonly Reply[];
  /** What the fastener must bear without taking a set. */
  readonly proof: (bolt: Fastening) => readonly Reply[];
  /** The tension a torque leaves, and how much of the proof load that is. */
  readonly tension: (bolt: Fastening, torque: Measured) => readonly Reply[];
  /** How much longer the fastener gets for an angle. */
  readonly stretch: (bolt: Fastening, angle: Degrees) => readonly Reply[];
};
