/** In seconds unless said otherwise. None of these has been tuned on people's speech. */
export const LIMITS = {
  /** The library turns every block it is sent into text for a log it seldom writes: few large ones, then. */
  chunk: 0.15,
  level: 0.1,
  /** Thrown away after a microphone opens, and after our own voice has ended. */
  opening: 0.5,
  afterMute: 0.25,
  /** Words that begin this early in a fresh recogniser may be the rest of what began before it. */
  fresh: 0.3,
  longest: 8,
  /**
   * A recogniser grows while it listens: after so long it is replaced when it has been quiet for a moment, and where
   * it is never quiet, after twice as long in any moment without words.
   */
  oldAge: 180,
  quiet: 0.4,
  /** Above the noise floor, in decibels, from which it is not quiet: somebody may have begun to speak. */
  loudDb: 6,
  /** Blocks, sent and unanswered: from the first on it counts as slow, at the second it is given a rest. */
  slow: 20,
  choked: 40,
} as const;
