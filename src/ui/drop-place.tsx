import { useEffect, useRef, useState } from 'preact/hooks';
import './drop-place.css';

type DropPlaceProps = {
  /** What is said while files are held over the page. */
  readonly says: string;
  readonly onFiles: (files: readonly File[]) => void;
};

/** Takes files that are let go anywhere over the screen it is on, and says so while they are held over it. */
export function DropPlace({ says, onFiles }: DropPlaceProps) {
  const [isOver, setOver] = useState(false);
  const latest = useRef(onFiles);
  latest.current = onFiles;
  useEffect(() => {
    const over = (event: DragEvent): void => {
      const { dataTransfer } = event;
      if (!dataTransfer || ![...dataTransfer.items].some(({ kind }) => kind === 'file')) return;
      event.preventDefault();
      dataTransfer.dropEffect = 'copy';
      setOver(true);
    };
    const leave = (event: DragEvent): void => {
      // Going from one part of the page to another is no leaving.
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = (event: DragEvent): void => {
      setOver(false);
      const files = [...(event.dataTransfer?.files ?? [])];
      if (files.length === 0) return;
      event.preventDefault();
      latest.current(files);
    };
    addEventListener('dragover', over);
    addEventListener('dragleave', leave);
    addEventListener('drop', drop);
    return () => {
      removeEventListener('dragover', over);
      removeEventListener('dragleave', leave);
      removeEventListener('drop', drop);
    };
  }, []);
  return isOver ? (
    <div class="drop-here" role="status">
      <span>{says}</span>
    </div>
  ) : null;
}
