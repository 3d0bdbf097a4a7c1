type Page = {
  readonly wakeLock: Pick<WakeLock, 'request'> | undefined;
  readonly document: Pick<Document, 'visibilityState' | 'addEventListener'>;
};

/**
 * Keeps the screen on while the page is in sight, from the first time it is asked to; browsers let go of it whenever the
 * page is hidden. Asked again, it asks the browser again and listens no second time.
 */
export function awakeKeeper({ wakeLock, document }: Page): () => void {
  let isListening = false;
  const ask = (): void => {
    // Refused on low battery and in some browsers: the screen then sleeps as usual, and nothing else changes.
    void wakeLock?.request('screen').catch(() => undefined);
  };
  return () => {
    ask();
    if (isListening) return;
    isListening = true;
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'visible') ask();
    });
  };
}
