import type { Entry } from '../../core/job/entry';
import { type Plan, planOf } from '../../core/job/plan';
import type { JobCard } from '../../core/log/log-store';
import type { Procedure } from '../../core/procedure/procedure';
import type { Screen } from '../../ui/app';
import type { RecordWords } from './record-lists';
import type { RecordBody, recordBody } from './record-view';

/** A job whose record can be looked at: the one being worked on, or one only read. */
export type RecordSource = {
  readonly card: JobCard;
  readonly procedure: Procedure;
  readonly entries: readonly Entry[];
};

/** Shows a record. It is worked out once for each length of the log: the screen is drawn far more often. */
export class RecordRoom {
  /** True while it is being printed: all lines, nothing folded. */
  isWhole = false;
  #seen: {
    readonly entries: readonly Entry[];
    readonly clips: number;
    readonly plan: Plan;
    readonly body: RecordBody;
  } | null = null;

  #make: typeof recordBody | null = null;

  constructor(private readonly words: RecordWords) {}

  /** Fetches what works a record out: nobody needs it at the Bench. */
  async load(): Promise<void> {
    this.#make ??= (await import('./record-view')).recordBody;
  }

  screen(
    { card, procedure, entries }: RecordSource,
    shown: {
      readonly playing: string | null;
      readonly picture: { readonly clip: string; readonly url: string } | null;
    },
    heard: ReadonlyMap<string, number>,
  ): Screen | null {
    const make = this.#make;
    if (!make) return null;
    const { say } = this.words;
    const started = entries.find((e) => e.kind === 'job-started');
    const facts = [
      started?.kind === 'job-started' ? started.machine : procedure.machine,
      say('procedure-edition', { edition: procedure.edition }),
      card.who,
      card.closed ? say('job-closed') : say('job-open'),
    ];
    return {
      name: 'record',
      job: card.id,
      title: card.title,
      facts: facts.filter((fact) => fact !== ''),
      demonstration: procedure.demonstration,
      ...this.#body(make, procedure, entries, heard),
      playing: shown.playing,
      picture: shown.picture && { ...shown.picture, say: say('line-picture') },
      whole: this.isWhole,
    };
  }

  #body(
    make: typeof recordBody,
    procedure: Procedure,
    entries: readonly Entry[],
    heard: ReadonlyMap<string, number>,
  ): RecordBody {
    if (this.#seen?.entries === entries && this.#seen.clips === heard.size) return this.#seen.body;
    const plan = this.#seen?.plan.procedure === procedure ? this.#seen.plan : planOf(procedure);
    const body = make(plan, entries, heard, this.words);
    this.#seen = { entries, clips: heard.size, plan, body };
    return body;
  }
}
