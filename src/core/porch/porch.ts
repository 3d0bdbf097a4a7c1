import type { JobCard } from '../log/log-store';

/** A procedure that a job can be begun with, under the number its list shows. */
export type ProcedureAt = { readonly number: number; readonly id: string; readonly title: string };

/** A job of this machine, under the number its list shows. */
export type JobAt = { readonly number: number } & Pick<JobCard, 'id' | 'title' | 'closed'>;

/** What is read back before anything is written or another job is opened. */
export type Asked =
  | { readonly kind: 'begin'; readonly procedure: ProcedureAt }
  | { readonly kind: 'open'; readonly job: JobAt };

/** Where one stands before a job is open: what can be begun or taken up, and what was asked back and not answered yet. */
export type Porch = {
  readonly procedures: readonly ProcedureAt[];
  readonly jobs: readonly JobAt[];
  /** The job worked on last, unless it is closed or gone. */
  readonly last: JobAt | null;
  readonly asked: Asked | null;
};
