/** One line of the spoken-log timeline. */
export type TimelineLine = {
  readonly seq: number;
  readonly at: number;
  readonly kind:
    | 'heard'
    | 'rejected'
    | 'said'
    | 'done'
    | 'measured'
    | 'timer'
    | 'job'
    | 'break'
    | 'fault'
    | 'correction'
    | 'question'
    | 'note'
    | 'picture';
  readonly text: string;
  readonly undone: boolean;
  readonly phase: string;
  readonly bolt: number | null;
  /** A recording or a picture in the blob store, as `kind` says. */
  readonly clip: string | null;
  /** The entry that this one takes back or puts right, by its seq. */
  readonly corrects?: number;
  /** Who made it, where that is worth saying: on a change of person. */
  readonly who?: string;
};
