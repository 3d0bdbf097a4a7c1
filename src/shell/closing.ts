import { blockLine } from '../core/job/announce/blocks';
import { blocksOf } from '../core/job/blocks';
import type { Tongue } from '../core/tongue';
import type { Phrased } from '../machine/desk-parts';
import type { ClosingProps } from '../ui/jobs/closing-sheet';
import type { Seat } from './job/seat';
import type { ShellParts } from './shell-parts';

type ClosingHost = { readonly seat: Seat; readonly session: string } & Pick<ShellParts, 'clock'> & {
    readonly tongue: Pick<Tongue, 'phrase'>;
  };

/**
 * The sheet with what still blocks closing the open job: asked for by hand, or there because a command was answered with
 * it. Then it goes with the next answer, so that nobody needs a hand to put it away.
 */
export class Closing {
  /** The answer that stood when it was asked for by hand; undefined where nobody has asked. */
  #asked: Phrased | null | undefined;
  #putAway: Phrased | null = null;

  constructor(private readonly at: ClosingHost) {}

  ask(): void {
    this.#asked = this.at.seat.open?.desk.snapshot.said;
  }

  putAway(): void {
    this.#asked = undefined;
    this.#putAway = this.at.seat.open?.desk.snapshot.said ?? null;
  }

  shown(): ClosingProps | null {
    const { seat, tongue, clock, session } = this.at;
    if (!seat.open) return null;
    const { card, desk } = seat.open;
    const { said, saidCode, job } = desk.snapshot;
    const isTold = saidCode.startsWith('close-refused') && said !== this.#putAway;
    if (job.status === 'closed' || !(isTold || (this.#asked !== undefined && this.#asked === said))) return null;
    const blocks = blocksOf(job, { at: clock.wall(), mono: clock.mono(), session });
    const lines = blocks.map((block) => tongue.phrase([blockLine(block)]).shown);
    return { job: card.id, title: card.title, blocks: lines };
  }
}
