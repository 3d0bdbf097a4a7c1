import { describe, expect, test } from 'vitest';
import { seeded } from '../../../src/cli/bench/mixing';
import type { MeanTransform } from '../../../src/core/voice-profile/voice-profile';
import type { Acoustics } from '../../../src/speech/ear/adapting/acoustics';
import { learned } from '../../../src/speech/ear/adapting/learned';
import { meanTransform, transformed } from '../../../src/speech/ear/adapting/mean-transform';
import { type AlignedLine, occupancyOf } from '../../../src/speech/ear/adapting/occupancy';
import { solved } from '../../../src/speech/ear/adapting/solved';

const WIDTH = 13;
const STREAMS = 3;
const DENSITIES = 8;
const PHONES = ['SIL', ...Array.from({ length: 12 }, (_, n) => `P${n}`)];

const random = seeded(11);
/** Box and Muller, Annals of Mathematical Statistics 29 (1958). */
const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** A small model with far more room between its sounds than noise in them. */
const MODEL: Acoustics = {
  phones: PHONES,
  streams: STREAMS,
  densities: DENSITIES,
  width: WIDTH,
  means: Float32Array.from({ length: PHONES.length * STREAMS * DENSITIES * WIDTH }, () => 10 * normal()),
  variances: new Float32Array(PHONES.length * STREAMS * DENSITIES * WIDTH).fill(1),
  checksum: 1,
  logWeight: () => -Math.log(DENSITIES),
};

const identity = (): number[][] =>
  Array.from({ length: WIDTH }, (_, row) => Array.from({ length: WIDTH }, (_, n) => (n === row ? 1 : 0)));

const NOTHING: MeanTransform = { turn: identity(), shift: new Array<number>(WIDTH).fill(0) };
const SHIFTED: MeanTransform = { turn: identity(), shift: Array.from({ length: WIDTH }, (_, n) => (n % 4) - 1.5) };
const TURNED: MeanTransform = {
  turn: identity().map((row, r) => row.map((value, n) => value * 0.95 + (Math.abs(n - r) === 1 ? 0.03 : 0))),
  shift: SHIFTED.shift,
};

/** Speech of somebody whose means lie where the transform puts them: one second of it, each state ten frames long. */
function spokenBy(means: Float32Array, frames = 100): AlignedLine {
  const values = new Float32Array(frames * STREAMS * WIDTH);
  const states = Array.from({ length: frames / 10 }, (_, n) => ({
    phone: PHONES[1 + Math.floor(random() * (PHONES.length - 1))] ?? '',
    unit: 0,
    startFrame: 10 * n,
    frames: 10,
  }));
  for (const { phone, startFrame } of states) {
    for (let frame = startFrame; frame < startFrame + 10; frame += 1) {
      for (let stream = 0; stream < STREAMS; stream += 1) {
        const density = Math.floor(random() * DENSITIES);
        const at = ((PHONES.indexOf(phone) * STREAMS + stream) * DENSITIES + density) * WIDTH;
        for (let n = 0; n < WIDTH; n += 1)
          values[(frame * STREAMS + stream) * WIDTH + n] = (means[at + n] ?? 0) + normal();
      }
    }
  }
  return { features: { frames, width: WIDTH, values }, states };
}

const linesBy = (transform: MeanTransform): readonly AlignedLine[] => {
  const means = transformed(transform, MODEL);
  return Array.from({ length: 4 }, () => spokenBy(means, 400));
};

const furthest = (a: MeanTransform, b: MeanTransform): number =>
  Math.max(
    ...a.shift.map((value, n) => Math.abs(value - (b.shift[n] ?? 0))),
    ...a.turn.flatMap((row, r) => row.map((value, n) => Math.abs(value - (b.turn[r]?.[n] ?? 0)))),
  );

describe('the transform of a voice', () => {
  test.each([
    { name: 'none', known: NOTHING },
    { name: 'a shift', known: SHIFTED },
    { name: 'a turn and a shift', known: TURNED },
  ])('$name is found again in its speech', ({ known }) => {
    const found = meanTransform(occupancyOf(linesBy(known), MODEL, MODEL.means), MODEL, 0);
    // One frame in 400 alike is worth a standard error of 1 / sqrt(1600 * 3) in a figure of unit size.
    expect(furthest(found, known)).toBeLessThan(0.15);
  });

  test('with no speech at all leaves everything alone', () => {
    const found = meanTransform(occupancyOf([], MODEL, MODEL.means), MODEL);
    expect(furthest(found, NOTHING)).toBe(0);
    expect(transformed(found, MODEL)).toEqual(MODEL.means);
  });

  test('stays nearer to none the less has been heard', () => {
    const heard = occupancyOf(linesBy(SHIFTED), MODEL, MODEL.means);
    const away = [0, 500, 50_000].map((prior) => furthest(meanTransform(heard, MODEL, prior), NOTHING));
    expect(away.toSorted((a, b) => b - a)).toEqual(away);
    expect(away[2]).toBeLessThan((away[0] ?? 0) / 4);
  });

  test('never moves silence, which is the room and not the voice', () => {
    const size = STREAMS * DENSITIES * WIDTH;
    expect(transformed(TURNED, MODEL).slice(0, size)).toEqual(MODEL.means.slice(0, size));
    expect(transformed(TURNED, MODEL).slice(size)).not.toEqual(MODEL.means.slice(size));
  });
});

describe('what is learned from some lines', () => {
  test('is a transform that makes a line it has not heard likelier', () => {
    const { means, sureness } = learned(linesBy(TURNED), MODEL);
    expect(sureness).toBe('sure');
    if (!means) throw new Error('nothing was learned');
    const [fresh] = linesBy(TURNED);
    const likelihood = (of: Float32Array): number => occupancyOf(fresh ? [fresh] : [], MODEL, of).logLikelihood;
    expect(likelihood(transformed(means, MODEL))).toBeGreaterThan(likelihood(MODEL.means));
  });

  test('is nothing where the voice fits already', () => {
    expect(learned(linesBy(NOTHING), MODEL)).toEqual({ means: null, sureness: 'sure' });
  });

  test('is nothing where the lines do not agree with each other', () => {
    const opposite = { ...SHIFTED, shift: SHIFTED.shift.map((value) => -value) };
    const lines = [...linesBy(SHIFTED).slice(0, 2), ...linesBy(opposite).slice(0, 2)];
    expect(learned(lines, MODEL).means).toBeNull();
  });
});

test('a system of equations is solved, whatever the order of its rows', () => {
  const [x, y, z] = solved(
    [Float64Array.from([0, 2, 1]), Float64Array.from([1, -1, 0]), Float64Array.from([3, 0, 4])],
    Float64Array.from([7, -1, 15]),
  );
  expect([x, y, z]).toEqual([expect.closeTo(1), expect.closeTo(2), expect.closeTo(3)]);
});
