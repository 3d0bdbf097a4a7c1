import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** A sheet of paper as it comes out of the printer. */
export type Sheet = {
  /** In the order in which it was laid out, line by line. */
  readonly text: string;
  /** How much of each edge is white, in mm. */
  readonly white: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
};

const TOOLS = ['pdftotext', 'pdftoppm'];

const isHere = (tool: string): boolean =>
  (process.env.PATH ?? '').split(delimiter).some((folder) => existsSync(join(folder, tool)));

/** Poppler, which reads a PDF as somebody else's program does. */
export const canReadSheets = TOOLS.every(isHere);

if (!canReadSheets && process.env.REQUIRE_BROWSER === '1')
  throw new Error(`REQUIRE_BROWSER is set and ${TOOLS.join(' and ')} were not found: install poppler-utils.`);

if (!canReadSheets) console.log('SHEETS OF PAPER NOT RUN: install poppler-utils.');

const DPI = 36;
const ROOM = 512 * 1024 * 1024;
/** Lighter than this is paper. */
const INK = 200;

/** The sheets of a PDF, in shades of grey. */
export function sheetsOf(pdf: Buffer): readonly Sheet[] {
  const read = { input: pdf, maxBuffer: ROOM } as const;
  const texts = execFileSync('pdftotext', ['-raw', '-', '-'], read).toString('utf8').split('\f');
  const images = greyImages(execFileSync('pdftoppm', ['-gray', '-r', String(DPI), '-'], read));
  return images.map((image, i) => ({ text: texts[i] ?? '', white: edgesOf(image) }));
}

type Grey = { readonly width: number; readonly height: number; readonly pixels: Buffer };

/** Images one after another in the binary form of Netpbm's PGM: "P5", width, height, 255, then a byte a pixel. */
function greyImages(bytes: Buffer): readonly Grey[] {
  const images: Grey[] = [];
  for (let at = 0; at < bytes.length; ) {
    const head = /^P5\s(\d+)\s(\d+)\s255\s/.exec(bytes.toString('latin1', at, at + 40));
    if (!head) throw new Error('not an image in shades of grey');
    const [width, height] = [Number(head[1]), Number(head[2])];
    const from = at + head[0].length;
    at = from + width * height;
    images.push({ width, height, pixels: bytes.subarray(from, at) });
  }
  return images;
}

function edgesOf({ width, height, pixels }: Grey): Sheet['white'] {
  const box = { left: width, right: width, top: height, bottom: height };
  pixels.forEach((shade, i) => {
    if (shade >= INK) return;
    const [x, y] = [i % width, Math.floor(i / width)];
    box.left = Math.min(box.left, x);
    box.right = Math.min(box.right, width - 1 - x);
    box.top = Math.min(box.top, y);
    box.bottom = Math.min(box.bottom, height - 1 - y);
  });
  const mm = (dots: number): number => (dots / DPI) * 25.4;
  return { left: mm(box.left), right: mm(box.right), top: mm(box.top), bottom: mm(box.bottom) };
}
