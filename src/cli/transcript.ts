import type { Desk } from '../machine/desk';

/** One thing heard by a desk and what came of it, in a form that two hosts can be compared by. */
export type Turn = {
  readonly words: string;
  readonly outcome: 'command' | 'rejected';
  /** The command, or why it was rejected. */
  readonly what: string;
  readonly replies: string;
  readonly shown: string;
  readonly place: string;
};

/** What the desk said and did since `from` entries, and where it is now. */
export function turnSince(desk: Desk, from: number): Turn {
  const { entries, heard } = desk.snapshot;
  const said = entries.slice(from).filter((e) => e.kind === 'said');
  const spoken = entries.slice(from).findLast((e) => e.kind === 'heard' || e.kind === 'rejected');
  return {
    words: spoken && 'words' in spoken ? spoken.words : '',
    outcome: spoken?.kind === 'heard' ? 'command' : 'rejected',
    what: spoken ? (heard?.outcome ?? '') : 'nothing',
    replies: said.map((e) => (e.kind === 'said' ? e.code : '')).join(' | '),
    shown: said.map((e) => (e.kind === 'said' ? e.text : '')).join(' '),
    place: JSON.stringify(desk.node).replaceAll(/["{}]/g, '').replaceAll(':', '.'),
  };
}
