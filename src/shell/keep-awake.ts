/** Keeps the screen on while the page is in sight; browsers let go of it whenever the page is hidden. */
export function keepAwake(): void {
  const ask = (): void => {
    // Refused on low battery and in some browsers: the screen then sleeps as usual, and nothing else changes.
    void navigator.wakeLock?.request('screen').catch(() => undefined);
  };
  ask();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') ask();
  });
}
