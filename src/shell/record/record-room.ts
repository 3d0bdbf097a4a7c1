import type { Entry } from '../../core/job/entry';
import { planOf } from '../../core/job/plan';
import type { JobCard } from '../../core/log/log-store';
import type { Procedure } from '../../core/procedure/procedure';
import type { Screen } from '../../ui/app';
import type { RecordWords } from './record-lists';
import type { bodyMaker, MakeBody, RecordBody } from './record-view';

/** A job whose record can be looked at: the one being worked on, or one only read. */
export type RecordSource = {
  readonly card: JobCard;
  readonly procedure: Procedure;
  readonly entries: readonly Entry[];
};

/** Shows a record. What it shows is made once for each length of the log: the screen is drawn far more often. */
export class RecordRoom {
  /** True while it is being printed: all lines, nothing folded. */
  isWhole = false;
  #makerFor: typeof bodyMaker | null = null;
  #maker: { readonly procedure: Procedure; readonly make: MakeBody } | null = null;
  #seen: { readonly entries: readonly Entry[]; readonly clips: number; readonly body: RecordBody } | null = null;

  constructor(private readonly words: RecordWords) {}

  /** Fetches what works a record out: nobody needs it at the Bench. */
  async load(): Promise<void> {
    this.#makerFor ??= (await import('./record-view')).bodyMaker;
  }

  screen(
    { card, procedure, entries }: RecordSource,
    shown: {
      readonly playing: string | null;
      readonly picture: { readonly clip: string; readonly url: string } | null;
    },
    heard: ReadonlyMap<string, number>,
  ): Screen | null {
    const make = this.#make(procedure);
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
      ...this.#body(make, entries, heard),
      playing: shown.playing,
      picture: shown.picture && { ...shown.picture, say: say('line-picture') },
      whole: this.isWhole,
    };
  }

  #make(procedure: Procedure): MakeBody | null {
    if (this.#maker?.procedure !== procedure && this.#makerFor)
      this.#maker = { procedure, make: this.#makerFor(planOf(procedure), this.words) };
    return this.#maker?.make ?? null;
  }

  #body(make: MakeBody, entries: readonly Entry[], heard: ReadonlyMap<string, number>): RecordBody {
    if (this.#seen?.entries === entries && this.#seen.clips === heard.size) return this.#seen.body;
    const body = make(entries, heard);
    this.#seen = { entries, clips: heard.size, body };
    return body;
  }
}
