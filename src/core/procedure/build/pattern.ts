import { threadNamed } from '../../fastening/thread-named';
import type { PatternText } from '../document/fasteners';
import type { Path, Report } from '../issue';
import type { Fastener, Pattern, Point } from '../procedure';
import { readQuantity } from './quantity';

/** A fastener before its details are known: number, place and words. */
type Placing = Pick<Fastener, 'number' | 'at' | 'say' | 'row'>;

/** Places the fasteners of a pattern and gives each its details; null when they could not be placed. */
export function buildPattern(id: string, text: PatternText, at: Path, report: Report): Pattern | null {
  const placings = place(text, at, report);
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

function place(text: PatternText, at: Path, report: Report): readonly Placing[] | null {
  const ways = [text.fasteners, text.circle, text.grid].filter((way) => way !== undefined).length;
  if (ways !== 1) {
    const given = ways === 0 ? 'no layout' : `${ways} layouts`;
    report.error(
      'pattern-layout',
      at,
      given,
      'A pattern has exactly one layout.',
      'Give one of fasteners, circle and grid.',
    );
    return null;
  }
  if (text.circle) return onCircle(text.circle);
  if (text.grid) return onGrid(text.grid, at, report);
  return (text.fasteners ?? []).map(({ number, at: where, say, row }) => ({ number, at: toPoint(where), say, row }));
}

const HOURS = ['twelve', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven'];

/** Numbered clockwise. Each is its own row, so that its place on the clock is said every time: the next is across. */
function onCircle({ count, diameter, first = 0 }: NonNullable<PatternText['circle']>): readonly Placing[] {
  return Array.from({ length: count }, (_, index) => {
    const turned = (first + (index * 360) / count) % 360;
    const radians = (turned * Math.PI) / 180;
    const say = clockPlace(turned);
    const round = (mm: number): number => Math.round(mm * 100) / 100 + 0;
    const point = { x: round((diameter / 2) * Math.sin(radians)), y: round((-diameter / 2) * Math.cos(radians)) };
    return { number: index + 1, at: point, say, row: say };
  });
}

/** To the nearest half hour: 45° from the top is "half past one". */
function clockPlace(turned: number): string {
  const halves = Math.round(turned / 15) % 24;
  const hour = HOURS[Math.floor(halves / 2)] ?? '';
  return halves % 2 === 0 ? `${hour} o'clock` : `half past ${hour}`;
}

function onGrid(grid: NonNullable<PatternText['grid']>, at: Path, report: Report): readonly Placing[] | null {
  const { columns, rows, numbers } = grid;
  const fits =
    columns.say.length === columns.at.length &&
    rows.say.length === rows.at.length &&
    numbers.length === rows.at.length &&
    numbers.every((line) => line.length === columns.at.length);
  if (!fits) {
    const given = `${rows.at.length} rows, ${columns.at.length} columns`;
    report.error(
      'pattern-layout',
      [...at, 'grid'],
      given,
      'Names, places and numbers do not make one grid.',
      'Give a name and a place to each row and column, and a number or 0 to each crossing.',
    );
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
  if (!good)
    report.error('pattern-layout', at, 'no fasteners', 'The grid holds no fastener.', 'Number at least one crossing.');
  for (const { number, at: spot } of placings) {
    if (numbers.has(number)) {
      report.error(
        'duplicate-fastener',
        at,
        String(number),
        `Fastener ${number} is there twice.`,
        'Number each fastener once.',
      );
      good = false;
    }
    const key = `${spot.x} ${spot.y}`;
    const other = spots.get(key);
    if (other !== undefined) {
      report.error(
        'fasteners-overlap',
        at,
        `${other} and ${number}`,
        `Fasteners ${other} and ${number} are in the same place.`,
        'Correct the place of one of them.',
      );
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
      const mend = 'Correct the number, or add the fastener.';
      report.error(
        'unknown-fastener',
        [...here, 'numbers', position],
        String(number),
        `There is no fastener ${number}.`,
        mend,
      );
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
  if (!isKnown)
    report.error(
      'bad-thread',
      at,
      text,
      `"${text}" is no thread.`,
      'Write M10x1.25, M10 for the coarse pitch, or 3/8-16.',
    );
  return isKnown;
}
