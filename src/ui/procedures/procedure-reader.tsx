import { useState } from 'preact/hooks';
import type { ToldIssue } from '../../core/procedure/finding-words';
import type { Procedure } from '../../core/procedure/procedure';
import { DropPlace } from '../drop-place';
import type { OnUi } from '../events';
import { usePaperHead } from '../paper-head';
import { BeginJob } from '../start/begin-job';
import { useWords } from '../words/words-context';
import { IssueList } from './issue-list';
import { jumpTo } from './jump';
import { Provisions } from './provisions';
import { StepPage } from './step-page';
import './procedure-reader.css';

export type ProcedureReaderProps = {
  /** Null where the document has errors: then there is only the text and what is wrong with it. */
  readonly procedure: Procedure | null;
  /** The language it is written in, where that is not the one spoken. */
  readonly otherLanguage?: string | null;
  /** For begin, rehearse and the job card. */
  readonly id?: string;
  /** The document as text; needed to show issues beside their lines. */
  readonly source?: string;
  readonly issues?: readonly ToldIssue[];
  /** Who has worked here before. */
  readonly people: readonly string[];
};

/** A document read as pages: what it is, what it needs, then every step with its hazards and its drawing. */
export function ProcedureReader(props: ProcedureReaderProps & { readonly on: OnUi }) {
  const { procedure, id = procedure?.id ?? '', source = '', issues = [], otherLanguage = null, people, on } = props;
  const [isBeginning, setBeginning] = useState(false);
  const choice = procedure && !otherLanguage ? { ...procedure, id } : null;
  const w = useWords();
  usePaperHead(procedure ? `${procedure.title} · ${procedure.machine}` : w('procedure-broken'));
  return (
    <main class="page procedure">
      <DropPlace
        says={w('drop-procedure')}
        onFiles={(files) => on({ type: 'import-files', what: 'procedure', files })}
      />
      <h1>{procedure?.title ?? w('procedure-broken')}</h1>
      {procedure && (
        <>
          <div class="procedure-head">
            <p>
              {procedure.machine}. {w('procedure-edition', { edition: procedure.edition })}.
            </p>
            {procedure.demonstration && <strong class="mark">{w('demonstration-mark')}</strong>}
            <p>{procedure.source}</p>
            <p>
              <b>{w('safety-maker-first')}</b>
            </p>
          </div>
          {otherLanguage ? (
            <p>{w('procedure-other-language', { language: otherLanguage })}</p>
          ) : (
            <div class="procedure-actions">
              {choice && (
                <button
                  type="button"
                  class="button button-first"
                  aria-expanded={isBeginning}
                  onClick={() => setBeginning(!isBeginning)}
                >
                  {w('start-begin')}
                </button>
              )}
              <button type="button" class="button button-plain" onClick={() => on({ type: 'rehearse', procedure: id })}>
                {w('procedure-rehearse')}
              </button>
              <button
                type="button"
                class="button button-plain"
                onClick={() => on({ type: 'show-card', procedure: id })}
              >
                {w('procedure-card')}
              </button>
            </div>
          )}
          {choice && isBeginning && (
            <section class="procedure-actions">
              <BeginJob procedures={[choice]} chosen={choice} people={people} on={on} />
            </section>
          )}
          <nav class="procedure-actions" aria-label={w('procedure-phases')}>
            {procedure.phases.map((phase, p) => (
              <button
                key={phase.id}
                type="button"
                class="button button-plain"
                onClick={() => jumpTo(`phase-${phase.id}`)}
              >
                {w('phase-title', { number: p + 1, phase: phase.say })}
              </button>
            ))}
          </nav>
        </>
      )}
      {issues.length > 0 && (
        <section>
          <h2>{w('issues')}</h2>
          {/* Where nothing can be shown as pages the whole text is, so that what is good of it can be read too. */}
          <IssueList source={source} issues={issues} isWhole={!procedure} />
        </section>
      )}
      {procedure && (
        <>
          <Provisions procedure={procedure} />
          {procedure.phases.map((phase, p) => (
            <section key={phase.id} class="phase">
              <h2 id={`phase-${phase.id}`} tabIndex={-1}>
                {w('phase-title', { number: p + 1, phase: phase.say })}
              </h2>
              <ol class="phase-steps">
                {phase.steps.map((step, s) => (
                  <StepPage key={step.id} step={step} number={`${p + 1}.${s + 1}`} procedure={procedure} />
                ))}
              </ol>
            </section>
          ))}
        </>
      )}
    </main>
  );
}
