import { useEffect } from 'preact/hooks';

/** What stands at the head of every printed page while this screen is shown, and names the file of a PDF. */
export function usePaperHead(words: string): void {
  useEffect(() => {
    const { style } = document.documentElement;
    const usual = document.title;
    style.setProperty('--paper-head', `"${words.replaceAll(/["\\]/g, '\\$&').replaceAll(/\s+/g, ' ')}"`);
    document.title = words;
    return () => {
      style.removeProperty('--paper-head');
      document.title = usual;
    };
  }, [words]);
}
