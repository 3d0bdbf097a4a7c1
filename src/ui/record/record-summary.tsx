import { hoursAndMinutes } from '../time-words';
import { useWords } from '../words/words-context';
import { BoltTable, type PassTable } from './bolt-table';
import { PlainList, type PlainTable } from './plain-list';
import './record-summary.css';

export type SummaryProps = {
  readonly tables: readonly PassTable[];
  /** Working time, pauses left out, in ms. */
  readonly phases: readonly { readonly say: string; readonly workedMs: number }[];
  /** Readings, parts, debts, days: whatever else is best read as a plain table. Left out where empty. */
  readonly lists?: readonly PlainTable[];
  /** What was out of the ordinary, and how it was closed. */
  readonly exceptions: readonly { readonly seq: number; readonly text: string }[];
};

type RecordSummaryProps = SummaryProps & {
  /** Everything unfolded: for paper. */
  readonly whole: boolean;
  readonly onJump: (seq: number) => void;
};

/** What a reader wants before the lines: what went wrong, the bolts, the hours. Folded away on the screen, open on paper. */
export function RecordSummary({ tables, phases, lists = [], exceptions, whole, onJump }: RecordSummaryProps) {
  const w = useWords();
  return (
    <div class="summary">
      <details class="summary-part" open={whole}>
        <summary>{w('exceptions', { count: exceptions.length })}</summary>
        <ul class="summary-list">
          {exceptions.map((e) => (
            <li key={e.seq}>
              <button type="button" class="book-link" onClick={() => onJump(e.seq)}>
                {e.text}
              </button>
            </li>
          ))}
        </ul>
      </details>
      {tables.length > 0 && (
        <details class="summary-part" open={whole}>
          <summary>{w('bolts-by-pass')}</summary>
          {tables.map((table) => (
            <BoltTable key={table.say} table={table} onJump={onJump} />
          ))}
        </details>
      )}
      <details class="summary-part" open={whole}>
        <summary>{w('hours-by-phase')}</summary>
        <table class="summary-hours">
          <tbody>
            {phases.map((phase) => (
              <tr key={phase.say}>
                <th scope="row">{phase.say}</th>
                <td>{w('hours-minutes', hoursAndMinutes(phase.workedMs))}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
      {lists.map((list) => (
        <details key={list.say} class="summary-part" open={whole}>
          <summary>{list.say}</summary>
          <PlainList list={list} />
        </details>
      ))}
    </div>
  );
}
