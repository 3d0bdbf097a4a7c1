import type { Pattern, Point } from '../procedure/procedure';
import { escaped } from './escaped';
import { type Frame, frameOf, labelPlace } from './frame';

export type DrawingWords = {
  /** The title of the picture, for those who hear it read. */
  readonly title: string;
  readonly viewedFrom: string;
  readonly order: string;
  readonly generated: string;
};

/** An order to be drawn into a pattern; `generated` where it was worked out by rule. */
export type DrawnOrder = { readonly numbers: readonly number[]; readonly generated: boolean };

/**
 * A pattern as SVG text, in millimetres: outline, landmarks, each fastener with its number, and small beside it its
 * turn in the order. A thin line goes through them in that order, beginning at the ring drawn twice.
 */
export function patternSvg(pattern: Pattern, order: DrawnOrder | null, words: DrawingWords): string {
  const frame = frameOf(pattern);
  const { left, top, width, height, letter } = frame;
  const note =
    order === null ? [] : [`${words.order} ${order.numbers.join(' ')}`, order.generated ? words.generated : ''];
  const captions = [words.title, words.viewedFrom, ...note].filter((line) => line !== '');
  const tall = height + captions.length * letter * 1.4;
  const inside = [
    `<title>${escaped(words.title)}</title>`,
    `<rect x="${n(left)}" y="${n(top)}" width="${n(width)}" height="${n(tall)}" fill="#fff"/>`,
    ...outline(pattern, frame),
    ...(order === null ? [] : path(pattern, order, frame)),
    ...pattern.fasteners.map((fastener) => {
      const turn = order?.numbers.indexOf(fastener.number) ?? -1;
      return fastenerSvg(fastener, turn < 0 ? null : turn + 1, frame);
    }),
    ...pattern.landmarks.map(({ say, at }) => landmark(say, at, frame)),
    ...captions.map((line, index) => {
      const y = top + height + letter * (1 + 1.4 * index);
      return text({ x: left + letter / 2, y }, line, letter * 0.8, 'start');
    }),
  ];
  const box = [left, top, width, tall].map(n).join(' ');
  return `<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="${box}" font-family="sans-serif">\n${inside.join('\n')}\n</svg>\n`;
}

/** Two decimals of a millimetre are finer than any printer. */
const n = (value: number): string => String(Math.round(value * 100) / 100 + 0);

const outline = ({ outline: points }: Pattern, { letter }: Frame): readonly string[] =>
  points.length < 3
    ? []
    : [
        `<polygon points="${points.map(({ x, y }) => `${n(x)},${n(y)}`).join(' ')}" fill="#f4f4f4" stroke="#000" stroke-width="${n(letter / 12)}"/>`,
      ];

function path(pattern: Pattern, { numbers }: DrawnOrder, { radius, letter }: Frame): readonly string[] {
  const places = numbers.flatMap((number) => pattern.fasteners.find((one) => one.number === number)?.at ?? []);
  const [start] = places;
  if (start === undefined) return [];
  const line = places.map(({ x, y }) => `${n(x)},${n(y)}`).join(' ');
  return [
    `<polyline points="${line}" fill="none" stroke="#999" stroke-width="${n(letter / 14)}"/>`,
    `<circle cx="${n(start.x)}" cy="${n(start.y)}" r="${n(radius * 1.25)}" fill="none" stroke="#000" stroke-width="${n(letter / 14)}"/>`,
  ];
}

function fastenerSvg({ number, at }: Pattern['fasteners'][number], turn: number | null, frame: Frame): string {
  const { radius, letter } = frame;
  const dashed = turn === null ? ` stroke-dasharray="${n(letter / 5)}"` : '';
  const ring = `<circle cx="${n(at.x)}" cy="${n(at.y)}" r="${n(radius)}" fill="#fff" stroke="#000" stroke-width="${n(letter / 10)}"${dashed}/>`;
  const label = text({ x: at.x, y: at.y + radius * 0.38 }, String(number), radius * 1.05, 'middle', true);
  const beside = { x: at.x + radius * 1.1, y: at.y - radius * 0.8 };
  return [ring, label, ...(turn === null ? [] : [text(beside, `${turn}.`, radius * 0.7, 'start')])].join('');
}

function landmark(say: string, at: Point, frame: Frame): string {
  const { x, y, anchor, turn } = labelPlace(frame, at);
  const rotate = turn === 0 ? '' : ` transform="rotate(${turn} ${n(x)} ${n(y)})"`;
  return text({ x, y }, say, frame.letter * 0.8, anchor, false, rotate);
}

const text = (
  { x, y }: Point,
  words: string,
  size: number,
  anchor: 'start' | 'middle' | 'end',
  bold = false,
  more = '',
): string =>
  `<text x="${n(x)}" y="${n(y)}" font-size="${n(size)}" text-anchor="${anchor}"${bold ? ' font-weight="bold"' : ''}${more}>${escaped(words)}</text>`;
