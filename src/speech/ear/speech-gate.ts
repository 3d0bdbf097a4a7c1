import type { EarFrame } from './front-end';
import type { Level } from './level-meter';

export type GateSettings = {
  /** A frame counts as voice from this probability on, and only this far above the noise floor. */
  readonly voiceAtLeast: number;
  readonly aboveFloorDb: number;
  /** Nor one of which the denoiser took off more than this, in decibels. */
  readonly mostRemovedDb: number;
  /** While somebody speaks: nor one this far below his loudness, which rises and falls only so fast, in decibels a frame. */
  readonly rangeDb: number;
  readonly rise: number;
  readonly fall: number;
  /** Speech begins when this many of the last `windowFrames` frames are voice. */
  readonly startFrames: number;
  readonly windowFrames: number;
  /** This much quiet is the end of somebody's speech that is to be ignored. */
  readonly quietFrames: number;
};

type Heard = Pick<EarFrame, 'voice' | 'loudness' | 'removedDb'>;

/** What a frame did: `opened` and `closed` are the edges of an utterance. */
export type GateEdge = 'quiet' | 'opened' | 'speaking' | 'closed';

/**
 * Finds where speech begins and ends in a stream of frames. How long a pause ends it is asked anew for every frame,
 * since a half-said number deserves a longer wait than a finished command.
 */
export class SpeechGate {
  readonly #settings: GateSettings;
  #recent: boolean[] = [];
  #open = false;
  #silent = 0;
  #loudness = Number.NEGATIVE_INFINITY;
  /** Frames left in which to wait for quiet, and the quiet there has been. */
  #settling = 0;
  #settled = 0;

  constructor(settings: GateSettings) {
    this.#settings = settings;
  }

  push(frame: Heard, level: Level, waitFrames: number): GateEdge {
    const { startFrames, windowFrames } = this.#settings;
    const voiced = this.#isVoiced(frame, level);
    this.#recent = [...this.#recent.slice(1 - windowFrames), voiced];
    const active = this.#recent.filter(Boolean).length;
    if (this.#settling > 0) return this.#settle(voiced);
    if (!this.#open) {
      if (active < startFrames) return 'quiet';
      this.#open = true;
      this.#loudness = frame.loudness;
      this.#silent = 0;
      return 'opened';
    }
    this.#silent = voiced ? 0 : this.#silent + 1;
    if (this.#silent < waitFrames) return 'speaking';
    this.reset();
    return 'closed';
  }

  #isVoiced({ voice, loudness, removedDb }: Heard, level: Level): boolean {
    const { voiceAtLeast, aboveFloorDb, mostRemovedDb, rangeDb, rise, fall } = this.#settings;
    if (voice < voiceAtLeast || removedDb > mostRemovedDb || level.db < level.floorDb + aboveFloorDb) return false;
    if (!this.#open) return true;
    this.#loudness = Math.max(this.#loudness - fall, Math.min(loudness, this.#loudness + rise));
    return loudness >= this.#loudness - rangeDb;
  }

  /** Frames since the last voiced one, while open. */
  get silentFrames(): number {
    return this.#silent;
  }

  /**
   * Whoever is speaking now will not be heard: opens only after a moment's quiet, or after `mostFrames`, because a
   * room may never be quiet.
   */
  ignoreSpeaker(mostFrames: number): void {
    this.reset();
    this.#settling = mostFrames;
    this.#settled = 0;
  }

  #settle(voiced: boolean): GateEdge {
    this.#settled = voiced ? 0 : this.#settled + 1;
    this.#settling = this.#settled >= this.#settings.quietFrames ? 0 : this.#settling - 1;
    if (this.#settling === 0) this.reset();
    return 'quiet';
  }

  /** Closes without an edge: after a mute, an early answer, a change of microphone. */
  reset(): void {
    this.#open = false;
    this.#silent = 0;
    this.#recent = [];
  }
}
