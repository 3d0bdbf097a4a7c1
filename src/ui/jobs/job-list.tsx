import { useState } from 'preact/hooks';
import type { JobStand, StandingAt } from '../../core/log/job-stand';
import type { JobCard } from '../../core/log/log-store';
import { assertNever } from '../../core/result';
import type { OnUi } from '../events';
import { LineNumber } from '../line-number';
import { dateAndTime } from '../time-words';
import type { PlainKey, Say } from '../words/words';
import { useWords } from '../words/words-context';
import '../rows.css';
import './job-list.css';

/** A job as a list shows it. */
export type JobLine = {
  /** What it is called by when it is opened by voice. */
  readonly number: number;
  readonly card: JobCard;
  /** Entries in its log. */
  readonly entries: number;
  /** The one that is being worked on. */
  readonly isOpen: boolean;
  /** Where it stands; null until that is worked out, and where its log is damaged. */
  readonly stand: JobStand | null;
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
        on({ type: 'ask-closing', id });
        break;
      case 'delete':
        setDeleting(id);
        break;
    }
  };
  return (
    <ul class="rows jobs">
      {jobs.map(({ number, card, entries, stand }) => (
        <li key={card.id} class="row">
          <div class="row-words">
            <b class="row-title">
              <LineNumber number={number} />
              {card.title}
            </b>
            {stand && stand.machine !== '' && <span>{stand.machine}</span>}
            <span>{card.closed ? w('job-closed') : stand ? standWords(stand, w) : w('job-open')}</span>
            <span class="quiet">
              {[
                w('job-began', { when: dateAndTime(w, card.created), who: card.who }),
                ...(stand ? [w('job-worked', { when: dateAndTime(w, stand.worked) })] : []),
                w('job-entries', { count: entries }),
              ].join(' · ')}
            </span>
          </div>
          <div class="job-actions">
            {actions.map((action) => (
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

const standWords = ({ at, isPaused, ends }: JobStand, w: Say): string =>
  [
    ...(isPaused ? [w('stand-paused')] : []),
    ...placeWords(at, w),
    ...(ends > 0 ? [w('loose-ends-count', { count: ends })] : []),
  ].join(' · ');

/** Documents end their steps with a stop, or not; here something may follow. */
const unstopped = (step: string): string => step.replace(/\.$/, '');

function placeWords(at: StandingAt, w: Say): readonly string[] {
  switch (at.kind) {
    case 'pass': {
      const { number, total, done, bolts } = at;
      return [w('stand-pass', { number, total, done, bolts }), unstopped(at.step)];
    }
    case 'step':
      return [w('stand-step', { phase: at.phase, number: at.number, total: at.total }), unstopped(at.step)];
    case 'closing':
      return [w('stand-closing')];
    case 'closed':
      return [w('job-closed')];
    default:
      return assertNever(at);
  }
}
