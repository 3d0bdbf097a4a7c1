/** The recorded speakers inside the Flite build that say 16 kHz speech. `kal` is left out: it is 8 kHz and muffled. */
export const SPEAKERS = ['slt', 'rms', 'awb', 'kal16'] as const;

export type Speaker = (typeof SPEAKERS)[number];

export const DEFAULT_SPEAKER: Speaker = 'slt';

/** How fast to talk: 1 is the speaker's own pace, 2 twice as fast. Values outside are brought to the nearer end. */
export const SLOWEST_RATE = 0.5;
export const FASTEST_RATE = 2;
