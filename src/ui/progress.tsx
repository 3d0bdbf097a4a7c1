import './progress.css';

type ProgressProps = {
  /** What is being done. */
  readonly says: string;
  /** How much of it is done, from 0 to 1; null where nobody can tell. */
  readonly share: number | null;
};

/** Something that takes a while: its words, and the browser's own bar. */
export function Progress({ says, share }: ProgressProps) {
  return (
    <label class="progress">
      <span>{says}</span>
      <progress max={1} {...(share === null ? {} : { value: share })} />
    </label>
  );
}
