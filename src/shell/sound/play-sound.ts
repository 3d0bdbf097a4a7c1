import type { StoredBlob } from '../../core/log/log-store';

/** The address of a stored clip or picture for as long as it is shown, and the undoing. */
export function blobUrl({ mime, bytes }: StoredBlob): { readonly url: string; readonly release: () => void } {
  // A copy on a buffer of its own: a Blob does not take one that others may share.
  const url = URL.createObjectURL(new Blob([new Uint8Array(bytes)], { type: mime }));
  return { url, release: () => URL.revokeObjectURL(url) };
}

/** Plays a stored recording; `ended` is told once, with whether it could be played. The answer stops it. */
export function playSound(blob: StoredBlob, ended: (isPlayed: boolean) => void): () => void {
  const { url, release } = blobUrl(blob);
  const audio = new Audio(url);
  let isOver = false;
  const end = (isPlayed: boolean): void => {
    if (isOver) return;
    isOver = true;
    audio.pause();
    release();
    ended(isPlayed);
  };
  audio.onended = () => end(true);
  audio.onerror = () => end(false);
  audio.play().catch(() => end(false));
  return () => end(true);
}
