import type { Earcon } from '../core/ports';

/** One note of an earcon, gliding from one pitch to another (the same for a steady note), then a rest. */
type Note = { readonly fromHz: number; readonly toHz: number; readonly ms: number; readonly restMs: number };

/**
 * The earcons are told apart by contour, not by pitch, because a phone on a wing panel and a hooded ear both change
 * the pitch balance: one tick; one sinking note; three steps up; two level pairs; four low beats. All lie where workshop
 * noise is thinner and a small loudspeaker still speaks, 400 to 1600 Hz.
 */
const SCORES: Readonly<Record<Earcon, readonly Note[]>> = {
  heard: [steady(1200, 70, 0)],
  'not-understood': [{ fromHz: 640, toHz: 430, ms: 220, restMs: 0 }],
  'pass-complete': [steady(660, 90, 20), steady(880, 90, 20), steady(1320, 180, 0)],
  'timer-up': [steady(1050, 110, 60), steady(1050, 110, 200), steady(1050, 110, 60), steady(1050, 110, 0)],
  'saved-not': [steady(420, 130, 70), steady(420, 130, 70), steady(420, 130, 70), steady(420, 260, 0)],
};

const PEAK = 0.6;
/** Long enough that a note starts and stops without a click. */
const RAMP_MS = 8;

function steady(hz: number, ms: number, restMs: number): Note {
  return { fromHz: hz, toHz: hz, ms, restMs };
}

export const earconMs = (earcon: Earcon): number =>
  SCORES[earcon].reduce((sum, { ms, restMs }) => sum + ms + restMs, 0);

/** The samples of an earcon, from -1 to 1, at the rate of the context that will play it. */
export function earconSamples(earcon: Earcon, rateHz: number): Float32Array<ArrayBuffer> {
  const samples = new Float32Array(Math.ceil((earconMs(earcon) / 1000) * rateHz));
  let startMs = 0;
  for (const note of SCORES[earcon]) {
    samples.set(tone(note, rateHz), Math.round((startMs / 1000) * rateHz));
    startMs += note.ms + note.restMs;
  }
  return samples;
}

/** A sine with its octave for edge, under a raised-cosine ramp at both ends. */
function tone({ fromHz, toHz, ms }: Note, rateHz: number): Float32Array<ArrayBuffer> {
  const length = Math.floor((ms / 1000) * rateHz);
  const ramp = (RAMP_MS / 1000) * rateHz;
  let phase = 0;
  return Float32Array.from({ length }, (_, i) => {
    const along = i / (length - 1);
    phase += (2 * Math.PI * (fromHz + (toHz - fromHz) * along)) / rateHz;
    const edge = Math.min(1, i / ramp, (length - 1 - i) / ramp);
    return PEAK * (0.8 * Math.sin(phase) + 0.2 * Math.sin(2 * phase)) * 0.5 * (1 - Math.cos(Math.PI * edge));
  });
}
