/**
 * The sound of an utterance lies beside the log and never in it: its id names the line, and the line knows nothing of it.
 * With the time in it a clip is never taken for that of another line, where a log was replaced by another one.
 */
const PREFIX = 'heard-';

export const heardClipId = ({ seq, at }: { readonly seq: number; readonly at: number }): string =>
  `${PREFIX}${seq}-${at}`;

export const isHeardClip = (id: string): boolean => id.startsWith(PREFIX);
