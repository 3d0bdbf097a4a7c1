/**
 * A key as it reaches the page, and what had the focus: the page itself, a control, a field for text, or a sheet that
 * lies over the Bench.
 */
export type Press = {
  readonly key: string;
  /** The keyboard repeats it because it is held down. */
  readonly repeat: boolean;
  readonly focus: 'page' | 'control' | 'text' | 'sheet';
};

/** The four fallback buttons by place: on, back, hold, tell. */
type ButtonPlace = 0 | 1 | 2 | 3;

export type KeyAct =
  | { readonly act: 'stop' }
  | { readonly act: 'button'; readonly place: ButtonPlace }
  | { readonly act: 'talk'; readonly down: boolean }
  /** Ours, so the page must not scroll by it, but nothing happens. */
  | { readonly act: 'nothing' };

/**
 * The keys that pedals, page turners and remotes send. Only keys that write nothing, so that no letter is ever a
 * shortcut (WCAG 2.2, 2.1.4). The four keys of the block above the arrows are the four buttons, in pairs.
 */
const PLACES: ReadonlyMap<string, ButtonPlace> = new Map([
  ['PageDown', 0],
  ['ArrowRight', 0],
  ['Enter', 0],
  ['Home', 1],
  ['End', 2],
  ['PageUp', 3],
  ['ArrowLeft', 3],
]);

const TALK = ' ';

/** What pressing a key does on the Bench. A held key acts once: its repeats never complete another bolt. */
export function keyDown(press: Press): KeyAct | null {
  if (press.key === 'Escape') return press.repeat ? null : { act: 'stop' };
  // Nobody who reads a sheet or writes in a field means the bolt underneath.
  if (press.focus === 'text' || press.focus === 'sheet') return null;
  // On a control, Enter and the space bar belong to the control.
  if (press.focus === 'control' && (press.key === 'Enter' || press.key === TALK)) return null;
  const place = PLACES.get(press.key);
  if (place === undefined && press.key !== TALK) return null;
  if (press.repeat) return { act: 'nothing' };
  return place === undefined ? { act: 'talk', down: true } : { act: 'button', place };
}

/** Letting go ends push-to-talk, wherever the focus has gone meanwhile. */
export const keyUp = (key: string): KeyAct | null => (key === TALK ? { act: 'talk', down: false } : null);

/** What a key does to a number that is being keyed in: it ends it, takes back its last figure, or is put behind it. */
export function padKey(key: string): 'done' | 'back' | { readonly put: string } {
  if (key === 'Enter') return 'done';
  return key === 'Backspace' ? 'back' : { put: key === ',' ? '.' : key };
}
