import { options } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** True while the page is being put on paper, however that was asked for. */
export function usePrinting(): boolean {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    const before = () => atOnce(() => setPrinting(true));
    const after = () => setPrinting(false);
    addEventListener('beforeprint', before);
    addEventListener('afterprint', after);
    return () => {
      removeEventListener('beforeprint', before);
      removeEventListener('afterprint', after);
    };
  }, []);
  return printing;
}

/** The browser takes the page as it is when the handler returns, so the change must be drawn inside it. */
function atOnce(change: () => void): void {
  const usual = options.debounceRendering;
  options.debounceRendering = (draw) => draw();
  change();
  if (usual) options.debounceRendering = usual;
  else delete options.debounceRendering;
}
