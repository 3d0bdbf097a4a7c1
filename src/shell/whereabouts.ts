import type { ShowingRule } from '../core/job/command';
import type { ScreenName } from '../ui/events';
import type { Acknowledgement } from '../ui/setup/about';
import type { RecordDesk } from './record/record-desk';
import type { Rooms } from './rooms';
import type { ShellParts } from './shell-parts';

/** Which screen is shown, and what is looked up on the way to it. */
export class Whereabouts {
  screen: ScreenName = 'start';
  acknowledgements: readonly Acknowledgement[] = [];

  constructor(
    private readonly rooms: Rooms,
    private readonly record: RecordDesk,
    private readonly parts: Pick<ShellParts, 'acknowledgements'>,
  ) {}

  /** What was asked for by voice while a job is open. */
  async show(rule: ShowingRule): Promise<void> {
    const { seat, procedures } = this.rooms;
    if (rule !== 'show-card') return this.go(PLACES[rule]);
    if (seat.open) await procedures.cardOf(seat.open.procedure);
    this.screen = 'procedure';
  }

  async go(name: ScreenName): Promise<void> {
    const { jobs, storage, notices, setup } = this.rooms;
    // Told about the screen that is being left.
    for (const id of ['job', 'language', 'file', 'export']) notices.clear(id);
    await this.record.toOpenJob();
    this.screen = name;
    if (name === 'jobs' || name === 'start') await jobs.look();
    if (name !== 'setup') return;
    await storage.look();
    const { voices, microphones } = await setup.desk();
    await microphones.look();
    await voices.look();
    this.acknowledgements = await this.parts.acknowledgements();
  }

  /** To the Bench where a job is open there now; a job that can only be read is shown as its record. */
  async toBench(isOpen: boolean, id?: string): Promise<void> {
    await this.rooms.jobs.look();
    if (isOpen) this.screen = 'bench';
    else if (id !== undefined) await this.toRecord(id);
  }

  async toRecord(id: string): Promise<void> {
    this.screen = (await this.record.open(id)) ? 'record' : 'jobs';
  }
}

const PLACES: Readonly<Record<Exclude<ShowingRule, 'show-card'>, ScreenName>> = {
  'show-bench': 'bench',
  'show-record': 'record',
  'show-jobs': 'jobs',
  'show-procedures': 'procedures',
  'show-setup': 'setup',
};
