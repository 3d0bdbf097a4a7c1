import type { RuleName } from '../../core/job/command';
import type { UiEvent } from '../../ui/events';
import type { Settings } from '../../ui/setup/settings';
import type { Rooms } from '../rooms';
import type { ShellParts } from '../shell-parts';
import type { PorchDesk, PorchView } from './porch-desk';

export type PorchHooks = {
  readonly settings: () => Settings;
  readonly answer: (event: UiEvent) => Promise<void>;
  readonly faster: (steps: number) => void;
  readonly changed: () => void;
};

/** Has somebody listen while no job is open and there is sound. Who it is, is fetched only then. */
export class PorchWatch {
  #desk: PorchDesk | null = null;
  #fetched: Promise<void> | null = null;
  #screen = '';

  constructor(
    private readonly rooms: Rooms,
    private readonly parts: ShellParts,
    private readonly hooks: PorchHooks,
  ) {}

  /** Null while a job is open: its own desk listens then. */
  get view(): PorchView | null {
    return this.#desk?.isOpen ? this.#desk.view : null;
  }

  /** Asked at every change, so it does nothing where nothing is to be done. */
  attend(screen: string): void {
    const { seat, sound } = this.rooms;
    const isHearing = sound.isOpen && this.hooks.settings().recogniser !== 'typed';
    const isWanted = seat.open === null && isHearing;
    const desk = this.#desk;
    if (desk === null) {
      if (isWanted) this.#fetched ??= this.#fetch();
    } else if (desk.isOpen !== isWanted) {
      if (isWanted) desk.open();
      else desk.close();
    } else if (isWanted) {
      if (screen !== this.#screen) desk.forget();
      else desk.look();
    }
    this.#screen = screen;
  }

  /** A key or a button where no job is open. Only the talking can be stopped by one. */
  press(rule: RuleName): void {
    if (rule === 'stop') this.#desk?.stop();
  }

  async #fetch(): Promise<void> {
    const { PorchDesk } = await import('./porch-desk');
    const { seat, sound, session, jobs, library } = this.rooms;
    const { answer, faster, changed, settings } = this.hooks;
    this.#desk = new PorchDesk({
      parts: this.parts,
      tongue: this.parts.tongue,
      session,
      recogniser: sound.ear,
      voice: sound.voice,
      isSounding: () => sound.isSounding,
      stands: () => {
        const all = jobs.lines.map(({ number, card: { id, title, closed } }) => ({ number, id, title, closed }));
        return {
          procedures: library.ready.flatMap(({ number, id, title }) =>
            number === null ? [] : [{ number, id, title }],
          ),
          jobs: all,
          last: all.find(({ id }) => id === jobs.last?.card.id) ?? null,
        };
      },
      begun: (procedure) => ({
        machine: library.find(procedure)?.procedure?.machine ?? '',
        who: settings().people[0] ?? jobs.last?.card.who ?? this.rooms.say('who-unnamed'),
      }),
      perform: async (event) => {
        await answer(event);
        return !OPENS_JOB.has(event.type) || seat.open !== null;
      },
      faster,
      changed,
    });
    changed();
  }
}

const OPENS_JOB: ReadonlySet<UiEvent['type']> = new Set(['begin-job', 'resume-job', 'begin-tour']);
