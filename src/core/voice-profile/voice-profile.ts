/** The version of the form below. One that is newer than the program is left alone. */
export const PROFILE_VERSION = 1;

/** How many cepstral figures the model's means have in each of its three streams. */
export const CEPSTRA = 13;

/**
 * How one voice through one microphone differs from the voices that the acoustic model was made of: a mean `m` of the model
 * becomes `turn * m + shift` in the first stream, and `turn * m` in its two differences over time.
 */
export type MeanTransform = {
  /** Thirteen rows of thirteen. */
  readonly turn: readonly (readonly number[])[];
  readonly shift: readonly number[];
};

/** How far the lines read aloud bear it out. */
export type Sureness = 'sure' | 'fair';

/** What reading a few lines aloud has taught the ear about one person at one microphone. */
export type VoiceProfile = {
  readonly version: typeof PROFILE_VERSION;
  readonly id: string;
  readonly person: string;
  /** The headset or mask, in the person's own words. */
  readonly headset: string;
  /** Milliseconds of UTC. */
  readonly madeAt: number;
  /** The folder of the acoustic model and the checksum of its means: the transform means nothing for another. */
  readonly model: { readonly folder: string; readonly checksum: number };
  /** Loudness of the voice and of the room as they were then, in decibels below full scale. */
  readonly voiceDb: number;
  readonly noiseDb: number;
  /** Null where the model already fitted this voice as well as it can. */
  readonly means: MeanTransform | null;
  readonly sureness: Sureness;
};

/** What the ear itself needs of it. */
export type HearingAid = Pick<VoiceProfile, 'model' | 'means'>;
