import { useEffect } from 'preact/hooks';
import type { CardSection } from '../../core/card/card-sections';
import { heldTogether } from '../../core/card/held-together';
import type { OnUi } from '../events';
import { usePaperHead } from '../paper-head';
import { ScrollArea } from '../scroll-area';
import { useWords } from '../words/words-context';
import './card-page.css';

export type CardPageProps = {
  readonly title: string;
  readonly machine: string;
  readonly edition: string;
  readonly source: string;
  readonly demonstration: boolean;
  readonly sections: readonly CardSection[];
};

/** What is laid out, bought, set and written on before and during a job: for paper, and asked to be printed once drawn. */
export function CardPage(props: CardPageProps & { readonly on: OnUi }) {
  const { title, machine, edition, source, demonstration, sections, on } = props;
  const w = useWords();
  usePaperHead(`${w('card-title')}: ${title} · ${machine}`);
  useEffect(() => on({ type: 'print' }), []);
  return (
    <main class="page card">
      <h1>
        {w('card-title')}: {title}
      </h1>
      <div class="procedure-actions">
        <button type="button" class="button button-first" onClick={() => on({ type: 'print' })}>
          {w('export-print')}
        </button>
      </div>
      {demonstration && (
        <p class="card-boxed">
          <b>{w('card-demonstration')}</b>
        </p>
      )}
      <p>
        {machine}
        <br />
        {w('card-edition')}: {edition}
        <br />
        {w('card-source')}: {source}
        <br />
        <b>{w('card-makers-first')}</b>
      </p>
      <p class="card-lines">
        {(['card-job-number', 'card-date', 'card-mechanic'] as const).map((key) => (
          <span key={key} class="card-line">
            {w(key)}
          </span>
        ))}
      </p>
      {sections.map((section) => (
        <Section key={section.title} section={section} />
      ))}
    </main>
  );
}

function Section({ section }: { readonly section: CardSection }) {
  const { title, groups, write } = section;
  return (
    <section class={write ? 'card-section card-sheet' : 'card-section'}>
      <h2>{title}</h2>
      {write ? (
        <Table label={title} groups={groups} section={section} />
      ) : (
        groups.map((group) => (
          <div key={group.title}>
            {group.title !== '' && <h3>{group.title}</h3>}
            <Table label={[title, group.title].filter(Boolean).join(', ')} groups={[group]} section={section} />
          </div>
        ))
      )}
    </section>
  );
}

type TableProps = {
  readonly label: string;
  readonly groups: CardSection['groups'];
  readonly section: CardSection;
};

/** What is written on is one table, each bag or slot named beside its rows, so that it takes few sheets. */
function Table({ label, groups, section: { tick, write } }: TableProps) {
  return (
    <ScrollArea class="card-scroll" label={label}>
      <table class={write ? 'card-table card-wide' : 'card-table'}>
        {groups.map((group) => (
          <tbody key={group.title}>
            {group.rows.map((row, i) => (
              <tr key={`${i} ${row.join()}`}>
                {write && i === 0 && (
                  <th scope="rowgroup" rowSpan={group.rows.length}>
                    {group.title}
                  </th>
                )}
                {tick && <td class="card-tick" />}
                {row.map((cell, column) => (
                  <td key={`${column} ${cell}`}>{heldTogether(cell)}</td>
                ))}
                {write && <td class="card-write" />}
              </tr>
            ))}
          </tbody>
        ))}
      </table>
    </ScrollArea>
  );
}
