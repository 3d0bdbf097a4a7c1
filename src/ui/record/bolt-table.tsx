import type { FastenerMark } from '../../core/view/bench-view';
import { FastenerShape } from '../bench/fastener-shape';
import { MARK_WORDS } from '../bench/fastener-words';
import { ScrollArea } from '../scroll-area';
import { useWords } from '../words/words-context';
import './bolt-table.css';

/** One tightening as a table: a row a fastener, a column a pass. */
export type PassTable = {
  readonly say: string;
  /** Each pass with its target as printed: "40 N·m". */
  readonly passes: readonly { readonly say: string; readonly target: string }[];
  readonly bolts: readonly { readonly number: number; readonly cells: readonly PassCell[] }[];
};

/** Null where the fastener is not in the pass. */
export type PassCell = {
  readonly mark: FastenerMark;
  /** What was confirmed: "14:05", "45 + 45°, 14:12", "set 40". */
  readonly text: string;
  /** Said besides, where something was out of the ordinary. */
  readonly exception: string | null;
  /** The entry that confirmed it. */
  readonly seq: number | null;
} | null;

type BoltTableProps = { readonly table: PassTable; readonly onJump: (seq: number) => void };

const WORD = new Map(MARK_WORDS);

export function BoltTable({ table, onJump }: BoltTableProps) {
  const w = useWords();
  return (
    <ScrollArea class="bolts" label={table.say}>
      <table class="bolts-table">
        <caption>{table.say}</caption>
        <thead>
          <tr>
            <th scope="col">{w('bolt-column')}</th>
            {table.passes.map((pass) => (
              <th key={pass.say} scope="col">
                {pass.say} <span class="quiet">{pass.target}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.bolts.map((bolt) => (
            <tr key={bolt.number}>
              <th scope="row">{bolt.number}</th>
              {bolt.cells.map((cell, i) => (
                <td key={table.passes[i]?.say ?? i}>{cell && <Cell cell={cell} onJump={onJump} />}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollArea>
  );
}

function Cell({ cell, onJump }: { readonly cell: NonNullable<PassCell>; readonly onJump: (seq: number) => void }) {
  const w = useWords();
  const word = WORD.get(cell.mark);
  const { seq } = cell;
  return (
    <span class="bolts-cell">
      <svg class="bolts-shape" viewBox="-18 -12 36 24" role="img" aria-label={word && w(word)}>
        <FastenerShape mark={cell.mark} here={false} x={0} y={0} radius={9} />
      </svg>
      {seq === null ? (
        cell.text
      ) : (
        <button type="button" class="bolts-jump" onClick={() => onJump(seq)}>
          {cell.text}
        </button>
      )}
      {cell.exception && <b class="bolts-exception">{cell.exception}</b>}
    </span>
  );
}
