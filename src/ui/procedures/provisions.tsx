import type { LooseEndSpec, PartSpec, Procedure } from '../../core/procedure/procedure';
import type { PlainKey } from '../words/words';
import { useWords } from '../words/words-context';
import './provisions.css';

const USE: Readonly<Record<PartSpec['use'], PlainKey>> = {
  new: 'part-new',
  reuse: 'part-reuse',
  measured: 'part-measured',
};

const BLOCKS: Readonly<Record<LooseEndSpec['blocks'], PlainKey>> = {
  'turn-by-hand': 'milestone-turn-by-hand',
  crank: 'milestone-crank',
  'fuel-on': 'milestone-fuel-on',
  'first-start': 'milestone-first-start',
  'hand-back': 'milestone-hand-back',
};

/** What the job needs and what it leaves open on the way: tools, parts, loose ends, limits, rules. */
export function Provisions({ procedure }: { readonly procedure: Procedure }) {
  const w = useWords();
  const tools = [...procedure.tools.values()];
  const parts = [...procedure.parts.values()];
  const ends = [...procedure.looseEnds.values()];
  const limits = [...procedure.limits.values()];
  const rules = [...procedure.rules.values()];
  return (
    <div class="provisions">
      {tools.length > 0 && (
        <Rows
          title={w('procedure-tools')}
          rows={tools.map((t) => [
            t.say,
            [t.drive, t.socket, t.range?.printed].flatMap((part) => (part ? [unbroken(part)] : [])).join(', '),
          ])}
        />
      )}
      {parts.length > 0 && (
        <Rows
          title={w('procedure-parts')}
          rows={parts.map((p) => [`${p.quantity} × ${p.say}`, [w(USE[p.use]), p.rule].filter(Boolean).join('. ')])}
        />
      )}
      {ends.length > 0 && (
        <Rows
          title={w('procedure-ends')}
          rows={ends.map((e) => [e.say, w('end-before', { milestone: w(BLOCKS[e.blocks]) })])}
        />
      )}
      {limits.length > 0 && (
        <Rows
          title={w('procedure-limits')}
          rows={limits.map((l) => [
            l.say,
            [
              l.least && w('limit-least', { value: l.least.printed }),
              l.most && w('limit-most', { value: l.most.printed }),
              w('limit-whose', { whose: l.whose }),
            ]
              .filter(Boolean)
              .join(', '),
          ])}
        />
      )}
      {rules.length > 0 && (
        <Rows
          title={w('procedure-rules')}
          rows={rules.map((r) => [r.say, [...r.figures, w('limit-whose', { whose: r.whose })].join(', ')])}
        />
      )}
    </div>
  );
}

/** A value and its unit, and the two ends of a range, stay in one line. */
const unbroken = (value: string): string => value.replaceAll(' ', '\u00a0').replaceAll('–', '\u2060–\u2060');

function Rows({ title, rows }: { readonly title: string; readonly rows: readonly (readonly [string, string])[] }) {
  return (
    <table class="provisions-table">
      <caption>{title}</caption>
      <tbody>
        {rows.map(([name, detail]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{detail}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
