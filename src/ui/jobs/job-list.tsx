import { useState } from 'preact/hooks';
import type { JobCard } from '../../core/log/log-store';
import type { OnUi } from '../events';
import { dateAndTime } from '../time-words';
import type { PlainKey } from '../words/words';
import { useWords } from '../words/words-context';
import '../rows.css';
import './job-list.css';

/** A job as a list shows it. */
export type JobLine = {
  readonly card: JobCard;
  /** Entries in its log. */
  readonly entries: number;
  /** Where it stands, in words, where that is known without reading the whole log. */
  readonly place: string | null;
};

export type JobAction = 'resume' | 'brief' | 'record' | 'hand-over' | 'close' | 'delete';

const LABEL: Readonly<Record<JobAction, PlainKey>> = {
  resume: 'job-resume',
  brief: 'job-brief',
  record: 'job-record',
  'hand-over': 'job-hand-over',
  close: 'job-close',
  delete: 'job-delete',
};

type JobListProps = {
  readonly jobs: readonly JobLine[];
  readonly actions: readonly JobAction[];
  readonly on: OnUi;
};

export function JobList({ jobs, actions, on }: JobListProps) {
  const w = useWords();
  const [deleting, setDeleting] = useState<string | null>(null);
  const act = (action: JobAction, id: string): void => {
    switch (action) {
      case 'resume':
        on({ type: 'resume-job', id });
        break;
      case 'brief':
        on({ type: 'brief-job', id });
        break;
      case 'record':
        on({ type: 'open-record', job: id });
        break;
      case 'hand-over':
        on({ type: 'hand-over-job', id });
        break;
      case 'close':
        on({ type: 'close-job', id });
        break;
      case 'delete':
        setDeleting(id);
        break;
    }
  };
  return (
    <ul class="rows jobs">
      {jobs.map(({ card, entries, place }) => (
        <li key={card.id} class="row">
          <div class="row-words">
            <b class="row-title">{card.title}</b>
            <span class="quiet">{w('job-began', { when: dateAndTime(w, card.created), who: card.who })}</span>
            <span class="quiet">
              {card.closed ? w('job-closed') : (place ?? w('job-open'))} · {w('job-entries', { count: entries })}
            </span>
          </div>
          <div class="job-actions">
            {actions
              .filter((action) => !card.closed || action === 'record' || action === 'delete')
              .map((action) => (
                <button
                  key={action}
                  type="button"
                  class={action === 'resume' ? 'button button-first' : 'button button-plain'}
                  aria-label={w('job-action', { action: w(LABEL[action]), title: card.title })}
                  onClick={() => act(action, card.id)}
                >
                  {w(LABEL[action])}
                </button>
              ))}
          </div>
          {deleting === card.id && (
            <div class="job-sure" role="alert">
              <p>{w('job-delete-sure', { title: card.title, count: entries })}</p>
              <button
                type="button"
                class="button"
                onClick={() => {
                  setDeleting(null);
                  on({ type: 'delete-job', id: card.id });
                }}
              >
                {w('job-delete-really')}
              </button>
              <button type="button" class="button button-first" onClick={() => setDeleting(null)}>
                {w('job-keep')}
              </button>
            </div>
          )}
        </li>
      ))}
    </ul>
  );
}
