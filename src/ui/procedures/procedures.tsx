import { DropPlace } from '../drop-place';
import type { OnUi } from '../events';
import { FilePicker } from '../file-picker';
import { LineNumber } from '../line-number';
import type { ProcedureChoice } from '../start/begin-job';
import { useWords } from '../words/words-context';
import '../rows.css';
import './procedures.css';

export type ProcedureLine = ProcedureChoice & {
  readonly number: number | null;
  readonly errors: number;
  readonly warnings: number;
  /** The language it is written in, where that is not the one spoken: it can be read, but not worked to. */
  readonly otherLanguage: string | null;
  /** Brought in by the person, so it can be taken out again. */
  readonly own: boolean;
};

export type ProceduresProps = { readonly procedures: readonly ProcedureLine[] };

/** The documents on this machine, each with what the checker found in it. */
export function Procedures({ procedures, on }: ProceduresProps & { readonly on: OnUi }) {
  const w = useWords();
  const bring = (files: readonly File[]) => on({ type: 'import-files', what: 'procedure', files });
  return (
    <main class="page">
      <DropPlace says={w('drop-procedure')} onFiles={bring} />
      <h1>{w('nav-procedures')}</h1>
      <p>{w('safety-maker-first')}</p>
      <ul class="rows">
        {procedures.map((p) => (
          <li key={p.id} class="row">
            <div class="row-words">
              <b class="row-title">
                <LineNumber number={p.number} />
                {p.title}
              </b>
              <span class="quiet">
                {p.machine} · {w('procedure-edition', { edition: p.edition })}
              </span>
              <span class="procedure-marks">
                {p.demonstration && <strong class="mark">{w('demonstration-mark')}</strong>}
                {p.otherLanguage && (
                  <span class="quiet">{w('procedure-other-language', { language: p.otherLanguage })}</span>
                )}
                {p.errors > 0 && <strong class="mark">{w('procedure-errors', { count: p.errors })}</strong>}
                {p.warnings > 0 && <span class="quiet">{w('procedure-warnings', { count: p.warnings })}</span>}
              </span>
            </div>
            <div class="procedure-actions">
              <button
                type="button"
                class="button button-first"
                aria-label={w('job-action', { action: w('procedure-read'), title: p.title })}
                onClick={() => on({ type: 'open-procedure', id: p.id })}
              >
                {w('procedure-read')}
              </button>
              {p.errors === 0 && !p.otherLanguage && (
                <button
                  type="button"
                  class="button button-plain"
                  aria-label={w('job-action', { action: w('procedure-card'), title: p.title })}
                  onClick={() => on({ type: 'show-card', procedure: p.id })}
                >
                  {w('procedure-card')}
                </button>
              )}
              {p.own && (
                <button
                  type="button"
                  class="button button-plain"
                  aria-label={w('job-action', { action: w('procedure-remove'), title: p.title })}
                  onClick={() => on({ type: 'remove-procedure', id: p.id })}
                >
                  {w('procedure-remove')}
                </button>
              )}
            </div>
          </li>
        ))}
      </ul>
      {procedures.some(({ number }) => number !== null) && (
        <section>
          <p>{w('tour-again')}</p>
          <button type="button" class="button button-plain" onClick={() => on({ type: 'begin-tour' })}>
            {w('tour-begin')}
          </button>
        </section>
      )}
      <section>
        <h2>{w('procedure-import')}</h2>
        <p>{w('procedure-import-means')}</p>
        <FilePicker label={w('procedure-import-file')} accept=".yaml,.yml" onFile={(file) => bring([file])} />
      </section>
    </main>
  );
}
