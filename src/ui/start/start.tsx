import type { OnUi } from '../events';
import { type JobLine, JobList } from '../jobs/job-list';
import { useWords } from '../words/words-context';
import { BeginJob, type ProcedureChoice } from './begin-job';
import './start.css';

export type StartProps = {
  /** False until the tap that lets the page make sound and open the microphone. */
  readonly started: boolean;
  /** Jobs not yet closed, newest first. */
  readonly jobs: readonly JobLine[];
  readonly procedures: readonly ProcedureChoice[];
  readonly people: readonly string[];
  /** Nobody has worked with this machine yet. */
  readonly isNew: boolean;
};

/** The first screen: one tap to start, then the jobs that wait and the procedures to begin. */
export function Start({ started, jobs, procedures, people, isNew, on }: StartProps & { readonly on: OnUi }) {
  const w = useWords();
  return (
    <main class="start">
      <h1 class="start-title">{w('app-name')}</h1>
      {started ? (
        <>
          {jobs.length > 0 && (
            <section>
              <h2>{w('start-resume')}</h2>
              <JobList jobs={jobs} actions={['resume']} on={on} />
            </section>
          )}
          {isNew && (
            <section>
              <p>{w('tour-means')}</p>
              <button type="button" class="button button-plain" onClick={() => on({ type: 'begin-tour' })}>
                {w('tour-begin')}
              </button>
            </section>
          )}
          <section>
            <h2>{w('start-begin')}</h2>
            <BeginJob procedures={procedures} people={people} on={on} />
          </section>
        </>
      ) : (
        <>
          <p class="start-lead">{w('start-lead')}</p>
          <button type="button" class="start-tap" onClick={() => on({ type: 'start-tapped' })}>
            {w('start-tap')}
            <small class="start-tap-means">{w('start-tap-means')}</small>
          </button>
          <ul class="start-promises">
            <li>{w('safety-maker-first')}</li>
            <li>{w('safety-stop')}</li>
            <li>{w('safety-record')}</li>
            <li>{w('nothing-leaves')}</li>
          </ul>
        </>
      )}
    </main>
  );
}
