import { isTransform } from '../../../core/voice-profile/read-profile';
import type { MeanTransform, Sureness } from '../../../core/voice-profile/voice-profile';
import type { Acoustics } from './acoustics';
import { meanTransform, transformed } from './mean-transform';
import { type AlignedLine, type Occupancy, occupancyOf } from './occupancy';

/**
 * What a frame of a line that was left out must gain, as natural log of its likelihood, for the change to be worth making,
 * on the average and in the line that gains least. Voices that gained less were heard no better for it, and one gaining more
 * was heard far better (tests/real-speech/RESULTS.md).
 */
const LEAST_GAIN = 3;
const LEAST_GAIN_OF_ANY = 0.5;
/** Where even the line that gains least gains as much. */
const SURE_GAIN = 2;

/**
 * The transform that fits some lines, once it has been shown to fit lines it was not made from: each is held against what
 * the others teach. Null means where they do not, or where it would be no person's voice.
 */
export function learned(
  lines: readonly AlignedLine[],
  acoustics: Acoustics,
): { readonly means: MeanTransform | null; readonly sureness: Sureness } {
  const each = lines.map((line) => occupancyOf([line], acoustics, acoustics.means));
  const gains = lines.map((line, at) => {
    const others = meanTransform(joined(each.filter((_, n) => n !== at)), acoustics);
    const fitted = occupancyOf([line], acoustics, transformed(others, acoustics));
    const before = each[at]?.logLikelihood ?? 0;
    return (fitted.logLikelihood - before) / Math.max(1, fitted.frames);
  });
  const least = Math.min(...gains);
  const mean = gains.reduce((sum, gain) => sum + gain, 0) / Math.max(1, gains.length);
  const means = meanTransform(joined(each), acoustics);
  const isWorthIt = mean >= LEAST_GAIN && least >= LEAST_GAIN_OF_ANY && isTransform(means);
  const sureness: Sureness = !isWorthIt || least >= SURE_GAIN ? 'sure' : 'fair';
  return { means: isWorthIt ? means : null, sureness };
}

/** All of it as if it had been one piece of speech. */
function joined(parts: readonly Occupancy[]): Occupancy {
  const sum = (of: (part: Occupancy) => Float64Array): Float64Array => {
    const all = Float64Array.from(parts[0] ? of(parts[0]) : []);
    for (const part of parts.slice(1)) for (const [n, value] of of(part).entries()) all[n] = (all[n] ?? 0) + value;
    return all;
  };
  return {
    counts: sum(({ counts }) => counts),
    sums: sum(({ sums }) => sums),
    frames: parts.reduce((all, { frames }) => all + frames, 0),
    logLikelihood: parts.reduce((all, { logLikelihood }) => all + logLikelihood, 0),
  };
}
