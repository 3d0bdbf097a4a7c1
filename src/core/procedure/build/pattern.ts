import { threadNamed } from '../../fastening/thread-named';
import type { PatternText } from '../document/fasteners';
import type { Path, Report } from '../issue';
import type { Fastener, Pattern, Point } from '../procedure';
import { readQuantity } from './quantity';

/** A fastener before its details are known: number, place and words. */
type Placing = Pick<Fastener, 'number' | 'at' | 'say' | 'row'>;

/** Places the fasteners of a pattern and gives each its details; null when they could not be placed. */
export function buildPattern(
  id: string,
  text: PatternText,
  clock: readonly string[],
  at: Path,
  report: Report,
): Pattern | null {
  const placings = place(text, clock, at, report);
  if (placings === null || !distinct(placings, at, report)) return null;
  return {
    id,
    say: text.say,
    viewedFrom: text['viewed-from'],
    outline: (text.outline ?? []).map(toPoint),
    landmarks: (text.landmarks ?? []).map(({ say, at: where }) => ({ say, at: toPoint(where) })),
    fasteners: withDetails(placings, text, at, report),
    ...(text.joint && { joint: text.joint }),
  };
}

const toPoint = ([x, y]: readonly [number, number]): Point => ({ x, y });

function place(text: PatternText, clock: readonly string[], at: Path, report: Report): readonly Placing[] | null {
  const ways = [text.fasteners, text.circle, text.grid].filter((way) => way !== undefined).length;
  if (ways !== 1) {
    report.error('pattern-layout', at, String(ways), {});
    return null;
  }
  if (text.circle) return onCircle(text.circle, clock);
  if (text.grid) return onGrid(text.grid, at, report);
  return (text.fasteners ?? []).map(({ number, at: where, say, row }) => ({ number, at: toPoint(where), say, row }));
}

/** Numbered clockwise. Each is its own row, so that its place on the clock is said every time: the next is across. */
function onCircle(
  { count, diameter, first = 0 }: NonNullable<PatternText['circle']>,
  clock: readonly string[],
): readonly Placing[] {
  return Array.from({ length: count }, (_, index) => {
    const turned = (first + (index * 360) / count) % 360;
    const radians = (turned * Math.PI) / 180;
    // To the nearest half hour: 45° from the top is half past one.
    const say = clock[Math.round(turned / 15) % clock.length] ?? '';
    const round = (mm: number): number => Math.round(mm * 100) / 100 + 0;
    const point = { x: round((diameter / 2) * Math.sin(radians)), y: round((-diameter / 2) * Math.cos(radians)) };
    return { number: index + 1, at: point, say, row: say };
  });
}

function onGrid(grid: NonNullable<PatternText['grid']>, at: Path, report: Report): readonly Placing[] | null {
  const { columns, rows, numbers } = grid;
  const fits =
    columns.say.length === columns.at.length &&
    rows.say.length === rows.at.length &&
    numbers.length === rows.at.length &&
    numbers.every((line) => line.length === columns.at.length);
  if (!fits) {
    report.error('pattern-layout.grid', [...at, 'grid'], `${rows.at.length} × ${columns.at.length}`, {});
    return null;
  }
  return numbers.flatMap((line, r) =>
    line.flatMap((number, c) => {
      const row = rows.say[r] ?? '';
      const placing = {
        number,
        at: { x: columns.at[c] ?? 0, y: rows.at[r] ?? 0 },
        say: `${columns.say[c]}, ${row}`,
        row,
      };
      return number === 0 ? [] : [placing];
    }),
  );
}

function distinct(placings: readonly Placing[], at: Path, report: Report): boolean {
  const numbers = new Set<number>();
  const spots = new Map<string, number>();
  let good = placings.length > 0;
  if (!good) report.error('pattern-layout.empty', at, '0', {});
  for (const { number, at: spot } of placings) {
    if (numbers.has(number)) {
      report.error('duplicate-fastener', at, String(number), { number });
      good = false;
    }
    const key = `${spot.x} ${spot.y}`;
    const other = spots.get(key);
    if (other !== undefined) {
      report.error('fasteners-overlap', at, `${other}, ${number}`, { one: other, other: number });
      good = false;
    }
    numbers.add(number);
    spots.set(key, number);
  }
  return good;
}

function withDetails(placings: readonly Placing[], text: PatternText, at: Path, report: Report): readonly Fastener[] {
  const known = new Set(placings.map(({ number }) => number));
  const details = (text.details ?? []).map((detail, index) => {
    const here = [...at, 'details', index];
    for (const [position, number] of detail.numbers.entries()) {
      if (known.has(number)) continue;
      report.error('unknown-fastener.detail', [...here, 'numbers', position], String(number), { number });
    }
    const length =
      detail.length === undefined ? null : readQuantity(detail.length, 'length', [...here, 'length'], report);
    return {
      numbers: new Set(detail.numbers),
      has: {
        ...(detail.group && { group: detail.group }),
        ...(length && { length }),
        ...(detail.hole && { hole: detail.hole }),
        ...(detail.sealer && { sealer: detail.sealer }),
        ...(detail.thread && isThread(detail.thread, [...here, 'thread'], report) && { thread: detail.thread }),
        ...(detail.grade && { grade: detail.grade }),
      },
    };
  });
  return placings
    .toSorted((a, b) => a.number - b.number)
    .map((placing) => {
      let fastener: Fastener = placing;
      for (const { numbers, has } of details) if (numbers.has(placing.number)) fastener = { ...fastener, ...has };
      return fastener;
    });
}

function isThread(text: string, at: Path, report: Report): boolean {
  const isKnown = threadNamed(text).ok;
  if (!isKnown) report.error('bad-thread', at, text, { thread: text });
  return isKnown;
}
