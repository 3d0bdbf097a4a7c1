import { assertNever } from '../result';

/**
 * What a tag in a grammar file means. Tags are the only place where words get a value, so that no language is known
 * to the code:
 *
 *     seven {7}                      a number
 *     (<digit> hundred) {*100}       the sum of the numbers inside, times 100; {/4} divides
 *     (<digit> <digit>+) {join}      the numbers inside written one after another: one six five = 165
 *     point {.}                      the decimal point inside a join
 *     (<tens> <digit>) {sum}         the sum of the numbers inside; a rule's value is always summed
 *     newton metres {=N·m}           names a thing: a unit, an answer, a loose end
 *
 * `@name` marks a slot. It is put there when a grammar goes live and never written in a file.
 */
export type Tag =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'times'; readonly by: number }
  | { readonly kind: 'over'; readonly by: number }
  | { readonly kind: 'join' }
  | { readonly kind: 'point' }
  | { readonly kind: 'sum' }
  | { readonly kind: 'name'; readonly id: string }
  | { readonly kind: 'slot'; readonly name: string };

/** More digits than a number holds exactly are no number. */
const LONGEST = 15;
const NUMBER = /^\d+(?:\.\d+)?$/;

/** The meaning of a tag, or undefined where it has none. */
export function readTag(tag: string): Tag | undefined {
  const [mark, rest] = [tag.charAt(0), tag.slice(1)];
  if (tag === 'join') return { kind: 'join' };
  if (tag === 'sum') return { kind: 'sum' };
  if (tag === '.') return { kind: 'point' };
  if (mark === '=' && rest !== '') return { kind: 'name', id: rest };
  if (mark === '@' && rest !== '') return { kind: 'slot', name: rest };
  if (NUMBER.test(tag)) return { kind: 'number', value: Number(tag) };
  if (mark === '*' && NUMBER.test(rest)) return { kind: 'times', by: Number(rest) };
  if (mark === '/' && NUMBER.test(rest) && Number(rest) > 0) return { kind: 'over', by: Number(rest) };
  return undefined;
}

export const nameTag = (id: string): string => `=${id}`;
export const slotTag = (name: string): string => `@${name}`;

/** What words have come to so far, in the order said. */
export type Piece =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'point' }
  | { readonly kind: 'name'; readonly id: string };

/** The pieces of a tagged phrase from the pieces inside it. Names inside a sum or join are kept behind the number. */
export function tagged(tag: Tag, inside: readonly Piece[]): readonly Piece[] {
  switch (tag.kind) {
    case 'number':
      return [{ kind: 'number', value: tag.value }];
    case 'times':
      return scaled(inside, (value) => value * tag.by);
    case 'over':
      return scaled(inside, (value) => value / tag.by);
    case 'sum':
      return summed(inside);
    case 'join':
      return joined(inside);
    case 'point':
      return [{ kind: 'point' }];
    case 'name':
      return [{ kind: 'name', id: tag.id }];
    case 'slot':
      return inside;
  }
}

/** All numbers among the pieces as one number; pieces without a number stay as they are. */
export function summed(pieces: readonly Piece[]): readonly Piece[] {
  return scaled(pieces, (value) => value);
}

function scaled(pieces: readonly Piece[], change: (value: number) => number): readonly Piece[] {
  const numbers = pieces.filter((piece) => piece.kind === 'number');
  if (numbers.length === 0) return pieces;
  const total = numbers.reduce((sum, piece) => sum + piece.value, 0);
  return [{ kind: 'number', value: change(total) }, ...pieces.filter((piece) => piece.kind === 'name')];
}

function joined(pieces: readonly Piece[]): readonly Piece[] {
  const text = pieces.map(written).join('');
  const names = pieces.filter((piece) => piece.kind === 'name');
  const isNumber = text.length <= LONGEST && (NUMBER.test(text) || /^\.\d+$/.test(text));
  return isNumber ? [{ kind: 'number', value: Number(text) }, ...names] : names;
}

function written(piece: Piece): string {
  switch (piece.kind) {
    case 'number':
      return String(piece.value);
    case 'point':
      return '.';
    case 'name':
      return '';
    default:
      return assertNever(piece);
  }
}
