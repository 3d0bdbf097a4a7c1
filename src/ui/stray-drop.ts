import { useEffect } from 'preact/hooks';

/** A file let go where nothing takes it would have the browser open it in place of the app, in the middle of a job. */
export function useNoStrayDrop(): void {
  useEffect(() => {
    const keep = (event: DragEvent): void => {
      if (event.defaultPrevented) return;
      event.preventDefault();
      if (event.dataTransfer) event.dataTransfer.dropEffect = 'none';
    };
    addEventListener('dragover', keep);
    addEventListener('drop', keep);
    return () => {
      removeEventListener('dragover', keep);
      removeEventListener('drop', keep);
    };
  }, []);
}
