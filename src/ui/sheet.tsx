import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { useWords } from './words/words-context';
import './sheet.css';

type SheetProps = {
  readonly title: string;
  readonly onClose: () => void;
  /** The way to what lay on the sheet before. */
  readonly back?: { readonly label: string; readonly go: () => void } | undefined;
  readonly children: ComponentChildren;
};

/** A sheet laid over the screen until it is put away: a list too long to stay in sight. */
export function Sheet({ title, onClose, back, children }: SheetProps) {
  const w = useWords();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    dialog.current?.showModal();
  }, []);
  return (
    <dialog ref={dialog} class="sheet" aria-label={title} onClose={onClose}>
      <header class="sheet-head">
        <h2 class="sheet-title">{title}</h2>
        {back && (
          <button type="button" class="sheet-close" onClick={back.go}>
            {back.label}
          </button>
        )}
        <button type="button" class="sheet-close" onClick={() => dialog.current?.close()}>
          {w('sheet-close')}
        </button>
      </header>
      {children}
    </dialog>
  );
}
