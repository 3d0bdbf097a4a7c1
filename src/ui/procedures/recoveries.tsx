import type { Fault, Pass } from '../../core/procedure/procedure';
import type { PlainKey } from '../words/words';
import { useWords } from '../words/words-context';

const FAULT_WORDS: readonly (readonly [Fault, PlainKey])[] = [
  ['early', 'fault-early'],
  ['soft', 'fault-soft'],
  ['over', 'fault-over'],
  ['under', 'fault-under'],
  ['snapped', 'fault-snapped'],
  ['out-of-order', 'fault-out-of-order'],
  ['replaced', 'fault-replaced'],
];

/** What the document says to do when something goes wrong; where it says nothing, that is said too. */
export function Recoveries({ passes }: { readonly passes: readonly Pass[] }) {
  const w = useWords();
  return (
    <table class="passes-table">
      <caption class="passes-caption">{w('recoveries')}</caption>
      <tbody>
        {FAULT_WORDS.map(([fault, word]) => {
          const rules = [...new Set(passes.flatMap((pass) => pass.recovery[fault]?.say ?? []))];
          return (
            <tr key={fault}>
              <th scope="row">{w(word)}</th>
              <td>{rules.length === 0 ? w('recovery-none') : rules.join(' / ')}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
