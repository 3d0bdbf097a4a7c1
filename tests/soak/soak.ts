import { mkdirSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { circumstances } from './circumstances';
import { longShift } from './long-shift';

// npm run soak -- --hours 8 --seed 1. Memory is only comparable with --expose-gc, which the script passes.

const { values } = parseArgs({
  options: {
    hours: { type: 'string', default: '8' },
    seed: { type: 'string', default: '1' },
    out: { type: 'string', default: 'test-output/soak.json' },
  },
});

/** MB an hour that the heap may grow once the shift has settled: the log itself grows by less than one. */
const MOST_GROWTH_MB_PER_HOUR = 4;

/** Points of a hundred that what is heard right may fall from the first half of a shift to the second: chance, no more. */
const MOST_FALL = 6;

/** How many of a hundred were heard right. */
function heardRight(stretches: readonly { readonly said: number; readonly right: number }[]): number {
  const sum = (pick: 'said' | 'right'): number => stretches.reduce((total, one) => total + one[pick], 0);
  return (100 * sum('right')) / Math.max(1, sum('said'));
}

const median = (all: readonly number[]): number => all.toSorted((a, b) => a - b)[Math.floor(all.length / 2)] ?? 0;

/** The slope of a straight line through the points, by least squares. */
function slope(points: readonly { readonly x: number; readonly y: number }[]): number {
  const mean = (pick: (p: { readonly x: number; readonly y: number }) => number): number =>
    points.reduce((sum, p) => sum + pick(p), 0) / points.length;
  const [mx, my] = [mean((p) => p.x), mean((p) => p.y)];
  const over = points.reduce((sum, p) => sum + (p.x - mx) * (p.y - my), 0);
  const under = points.reduce((sum, p) => sum + (p.x - mx) ** 2, 0);
  return under === 0 ? 0 : over / under;
}

const hours = Number(values.hours);
const seed = Number(values.seed);
const shift = await longShift(hours, seed, (stretch) => {
  const { simulatedHours, entries, heapMb, rssMb, said, right, realTimeFactor, sentence } = stretch;
  console.log(
    `${simulatedHours.toFixed(2)} h  ${entries} entries  heap ${heapMb.toFixed(1)} MB  rss ${rssMb.toFixed(0)} MB  ` +
      `right ${right} of ${said}  ${realTimeFactor.toFixed(2)} of real time  ` +
      `a sentence ${sentence.median.toFixed(0)} ms, ${sentence.p95.toFixed(0)} ms at most of 95 in 100, a second of sound`,
  );
});

const settled = shift.stretches.slice(Math.floor(shift.stretches.length / 2));
const growthMbPerHour = slope(settled.map(({ simulatedHours: x, heapMb: y }) => ({ x, y })));
const half = Math.floor(shift.stretches.length / 2);
const halves = [shift.stretches.slice(0, half), shift.stretches.slice(half)].map((stretches) => ({
  rightPercent: heardRight(stretches),
  realTimeFactor: median(stretches.map(({ realTimeFactor }) => realTimeFactor)),
  sentenceMs: median(stretches.map(({ sentence }) => sentence.median)),
}));
const [first, second] = halves;
const enough = settled.length >= 5;
const failures = [
  ...(shift.movedByNobody > 0 ? [`${shift.movedByNobody} entries moved a job that nobody had asked to`] : []),
  ...(enough && growthMbPerHour > MOST_GROWTH_MB_PER_HOUR
    ? [`memory grows by ${growthMbPerHour.toFixed(1)} MB an hour`]
    : []),
  ...(enough && first && second && first.rightPercent - second.rightPercent > MOST_FALL
    ? [`heard right falls from ${first.rightPercent.toFixed(1)} % to ${second.rightPercent.toFixed(1)} %`]
    : []),
];
const result = {
  ...circumstances(seed),
  growthMbPerHour: enough ? growthMbPerHour : 'NOT MEASURED: the shift was too short',
  halves,
  failures,
  ...shift,
};
mkdirSync('test-output', { recursive: true });
writeFileSync(values.out, `${JSON.stringify(result, null, 2)}\n`);
const { stretches: _, ...short } = result;
console.log(JSON.stringify(short, null, 2));
if (failures.length > 0) process.exitCode = 1;
