import { DropPlace } from '../drop-place';
import type { OnUi } from '../events';
import { FilePicker } from '../file-picker';
import { BeginJob, type ProcedureChoice } from '../start/begin-job';
import { useWords } from '../words/words-context';
import { type JobLine, JobList } from './job-list';

export type JobsProps = {
  /** Newest first, closed ones too. */
  readonly jobs: readonly JobLine[];
  readonly procedures: readonly ProcedureChoice[];
  readonly people: readonly string[];
};

/** Every job on this machine: carry one on, hand it over, close it, begin another. */
export function Jobs({ jobs, procedures, people, on }: JobsProps & { readonly on: OnUi }) {
  const w = useWords();
  const [open, finished] = [jobs.filter(({ card }) => !card.closed), jobs.filter(({ card }) => card.closed)];
  const bring = (files: readonly File[]) => on({ type: 'import-files', what: 'job', files });
  return (
    <main class="page">
      <DropPlace says={w('drop-job')} onFiles={bring} />
      <h1>{w('nav-jobs')}</h1>
      {jobs.length === 0 && <p>{w('jobs-none')}</p>}
      {open.length > 0 && (
        <JobList jobs={open} actions={['resume', 'brief', 'record', 'hand-over', 'close', 'delete']} on={on} />
      )}
      {finished.length > 0 && (
        <section>
          <h2>{w('jobs-finished')}</h2>
          <JobList jobs={finished} actions={['record', 'delete']} on={on} />
        </section>
      )}
      <section>
        <h2>{w('jobs-take-over')}</h2>
        <p>{w('jobs-take-over-means')}</p>
        <FilePicker label={w('jobs-take-over-file')} accept=".json" onFile={(file) => bring([file])} />
      </section>
      <section>
        <h2>{w('start-begin')}</h2>
        <BeginJob procedures={procedures} people={people} on={on} />
      </section>
    </main>
  );
}
