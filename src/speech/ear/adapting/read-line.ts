import type { LineHeard, LineVerdict } from '../../../core/voice-profile/reading-aloud';
import { CEPSTRA } from '../../../core/voice-profile/voice-profile';
import type { Decoder } from '../decoder';
import { EAR_FRAME } from '../front-end';
import { oneWay } from '../one-way';
import type { Tuning } from '../tuning';
import type { Utterance } from '../utterance';
import { featuresOf } from './cepstra';
import type { AlignedLine } from './occupancy';

/** A voice is told from the room only when it stands so far above it, in decibels. */
const LEAST_SNR_DB = 12;
/** Down to here the ear hears as well as anywhere; ten decibels lower it lost six commands of sixteen. */
const LEAST_VOICE_DB = -65;
/** A room as loud as this is the trouble, and not the voice. */
const LOUD_ROOM_DB = -45;
/** Dearer than this, in the measure of the rejection policy, and what was read is not the line. */
const DEAREST = 40;

/**
 * Judges one line, and lays its sound units over its sound. Leaves its own search in the decoder. Null for the second part
 * unless the line is good.
 */
export function readLine(
  decoder: Decoder,
  words: readonly string[],
  utterance: Utterance,
  tuning: Pick<Tuning, 'loop' | 'ownCost'>,
): readonly [LineHeard, AlignedLine | null] {
  const { voiceDb, noiseDb } = utterance.levels;
  const answer = (verdict: LineVerdict): readonly [LineHeard, null] => [{ verdict, voiceDb, noiseDb }, null];
  if (utterance.isClipped) return answer('too-loud');
  if (voiceDb < LEAST_VOICE_DB) return answer('too-quiet');
  if (voiceDb - noiseDb < LEAST_SNR_DB) return answer(noiseDb > LOUD_ROOM_DB ? 'too-noisy' : 'too-quiet');
  const sound = utterance.trimmed();
  decoder.search({ commands: oneWay(words), decoys: [], filler: null });
  const found = decoder.decodeWhole(sound);
  if (found.words.length < words.length) return answer('unlike');
  const states = decoder.states();
  decoder.search({ commands: null, decoys: [], filler: tuning.loop });
  const loop = decoder.decodeWhole(sound).score;
  const frames = found.words.reduce((sum, word) => sum + word.frames, 0);
  const cost = found.words.reduce((sum, word) => sum + word.costPerFrame * word.frames, 0) / Math.max(1, frames);
  const overLoop = (loop - found.score) / Math.max(1, sound.length / EAR_FRAME);
  if (overLoop + tuning.ownCost * cost > DEAREST) return answer('unlike');
  const features = featuresOf(decoder.bands(sound), CEPSTRA, decoder.lifter);
  return [
    { verdict: 'good', voiceDb, noiseDb },
    { features, states },
  ];
}
