import { commandAtCursor } from '../core/job/cursor-command';
import type { Effect } from '../core/job/decision';
import type { Entry } from '../core/job/entry';
import { placeOf } from '../core/job/place';
import { nodeOf } from '../core/job/plan';
import type { JobRow, LogStore } from '../core/log/log-store';
import type { Clock, Hash, Recogniser, Voice } from '../core/ports';
import type { Procedure } from '../core/procedure/procedure';
import { assertNever, type Result } from '../core/result';
import type { Tongue } from '../core/tongue';
import { benchView } from '../core/view/build-bench';
import { timelineOf } from '../core/view/build-timeline';
import type { Screen } from '../ui/app';
import type { ScreenName, UiEvent } from '../ui/events';
import type { Notice } from '../ui/notices';
import type { Settings } from '../ui/setup/settings';
import { type ScreenWords, sayer } from '../ui/words/words';
import { earScreen } from './ear-screen';
import { beginJob, type DeskHost, type OpenFault, type OpenJob, resumeJob } from './job-desk';
import { checkDocument, type Document } from './library';
import { DEFAULT_SETTINGS, readSettings } from './settings';

/** The outside, as the composition root built it. */
export type ShellParts = {
  readonly store: LogStore;
  readonly hash: Hash;
  readonly clock: Clock;
  readonly newId: () => string;
  readonly tongue: Tongue;
  readonly words: ScreenWords;
  readonly documents: readonly Document[];
  readonly after: DeskHost['after'];
  /** Opens the one audio context from inside the tap, and makes ear and voice on it. */
  readonly openSound: (
    settings: Settings,
  ) => Promise<Result<{ readonly recogniser: Recogniser; readonly voice: Voice }, { readonly code: string }>>;
  /** Used when there is no sound: the buttons and the typed words still work. */
  readonly withoutSound: () => { readonly recogniser: Recogniser; readonly voice: Voice };
  readonly keepAwake: () => void;
  readonly print: () => void;
  readonly save: (name: string, text: string, mime: string) => void;
};

type Sound = { readonly recogniser: Recogniser; readonly voice: Voice };

/** Which screen is shown and what it shows. It keeps the open job and hands everything done on a screen to its desk. */
export class Shell {
  private screenName: ScreenName = 'start';
  private sound: Sound | null = null;
  private open: OpenJob | null = null;
  private jobs: readonly JobRow[] = [];
  private procedures: readonly {
    readonly document: Document;
    readonly procedure: Procedure;
    readonly warnings: number;
  }[] = [];
  private reading: Procedure | null = null;
  private notices: readonly Notice[] = [];
  private speaking = false;
  private shut = false;
  private readonly session: string;
  private readonly say;
  private readonly listeners = new Set<() => void>();
  settings: Settings = DEFAULT_SETTINGS;

  constructor(private readonly parts: ShellParts) {
    this.session = parts.newId();
    this.say = sayer(parts.words);
  }

  /** Reads what this machine has. Nothing of it is needed for the first paint. */
  async load(): Promise<void> {
    this.settings = await readSettings(this.parts.store);
    await this.readJobs();
    for (const document of this.parts.documents) {
      const checked = await checkDocument(await document.text(), document.file);
      if (checked.ok)
        this.procedures = [
          ...this.procedures,
          { document, procedure: checked.value, warnings: checked.warnings.length },
        ];
      else
        this.trouble(
          `broken-${document.file}`,
          `${document.file}: ${checked.error[0]?.message ?? ''} ${checked.error[0]?.mend ?? ''}`,
        );
      this.changed();
    }
  }

  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** The browser gives no lasting store: work goes on in memory and the person is told. */
  warnNotLasting(): void {
    this.trouble('store', this.say('store-not-lasting'));
    this.changed();
  }

  get jobOpen(): boolean {
    return this.open !== null;
  }

  get shownNotices(): readonly Notice[] {
    return this.notices;
  }

  readonly on = (event: UiEvent): void => {
    void this.handle(event);
  };

  /** The open job's log so far. */
  get entries(): readonly Entry[] {
    return this.open?.desk.snapshot.entries ?? [];
  }

  /** The state of things in a few words, for the page's data attributes. */
  status(): Readonly<Record<'ear' | 'voice' | 'armed' | 'place' | 'entries', string>> {
    const seen = this.open?.desk.snapshot;
    const ear = seen ? earScreen(seen, this.speaking, this.shut, null).state : 'off';
    const settled = seen?.ear.armed === seen?.live.revision;
    return {
      ear: ear === 'listening' && !settled ? 'arming' : ear,
      // A reply is not over in its listening gaps.
      voice: seen?.talking ? 'talking' : 'quiet',
      armed: seen?.ear.armed ?? '',
      place: seen ? nodeOf(seen.job.plan, placeOf(seen.job)) : '',
      entries: String(seen?.entries.length ?? 0),
    };
  }

  screen(): Screen {
    const procedures = this.procedures.map(({ document, procedure, warnings }) => ({
      id: document.id,
      title: procedure.title,
      edition: procedure.edition,
      machine: procedure.machine,
      demonstration: procedure.demonstration,
      errors: 0,
      warnings,
      own: document.own,
    }));
    const jobs = this.jobs.map(({ card, head }) => ({ card, entries: head.seq, place: null }));
    const { people } = this.settings;
    switch (this.screenName) {
      case 'start':
        return {
          name: 'start',
          started: this.sound !== null,
          ear: { state: this.sound ? 'listening' : 'off', trouble: null },
          jobs: jobs.filter(({ card }) => !card.closed),
          procedures,
          people,
        };
      case 'bench':
        return this.benchScreen() ?? { name: 'jobs', jobs, procedures, people };
      case 'record':
        return this.recordScreen() ?? { name: 'jobs', jobs, procedures, people };
      case 'jobs':
        return { name: 'jobs', jobs, procedures, people };
      case 'procedures':
        return { name: 'procedures', procedures };
      case 'procedure':
        return this.reading ? { name: 'procedure', procedure: this.reading } : { name: 'procedures', procedures };
      case 'setup':
        return { name: 'setup', settings: this.settings };
      default:
        return assertNever(this.screenName);
    }
  }

  private benchScreen(): Screen | null {
    if (!this.open) return null;
    const { desk } = this.open;
    const seen = desk.snapshot;
    const show = (all: Parameters<Tongue['phrase']>[0]) => this.parts.tongue.phrase(all).shown;
    const moment = { at: this.parts.clock.wall(), mono: this.parts.clock.mono(), session: this.session };
    const view = benchView(seen.job, moment, {
      show,
      label: (rule) => this.say(`button-${rule}` as Parameters<typeof this.say>[0] & 'button-done'),
      examples: this.parts.tongue.examples(seen.live),
    });
    const trouble = seen.ear.fault
      ? this.parts.tongue.phrase([{ code: troubleCode(seen.ear.fault), slots: {} }]).shown
      : null;
    return {
      name: 'bench',
      view,
      ear: earScreen(seen, this.speaking, this.shut, trouble),
      said: seen.said?.shown ?? null,
    };
  }

  private recordScreen(): Screen | null {
    if (!this.open) return null;
    const { desk, card } = this.open;
    const { job, entries } = desk.snapshot;
    const show = (all: Parameters<Tongue['phrase']>[0]) => this.parts.tongue.phrase(all).shown;
    return {
      name: 'record',
      job: card.id,
      title: card.title,
      facts: [job.plan.procedure.machine, card.who].filter((fact) => fact !== ''),
      demonstration: job.plan.procedure.demonstration,
      lines: timelineOf(job.plan, entries, show),
      playing: null,
      tables: [],
      phases: [],
      exceptions: [],
      whole: false,
    };
  }

  private async handle(event: UiEvent): Promise<void> {
    switch (event.type) {
      case 'start-tapped':
        await this.start();
        break;
      case 'open-screen':
        this.screenName = event.name;
        if (event.name === 'jobs' || event.name === 'start') await this.readJobs();
        break;
      case 'notice-dismissed':
        this.notices = this.notices.filter(({ id }) => id !== event.id);
        break;
      case 'begin-job': {
        const found = this.procedures.find(({ document }) => document.id === event.procedure);
        if (!found) break;
        const text = await found.document.text();
        this.seat(
          await beginJob(this.host(), { text, file: found.document.file, machine: event.machine, who: event.who }),
        );
        break;
      }
      case 'resume-job':
        this.seat(await resumeJob(this.host(), event.id));
        break;
      case 'command':
        this.press(event.command);
        break;
      case 'typed':
        this.open?.desk.type(event.words);
        break;
      case 'pedal':
        this.pedal(event.down);
        break;
      case 'open-record':
        if (this.open?.card.id !== event.job) this.seat(await resumeJob(this.host(), event.job));
        this.screenName = 'record';
        break;
      case 'delete-job':
        await this.parts.store.remove(event.id);
        await this.readJobs();
        break;
      case 'open-procedure':
        this.reading = this.procedures.find(({ document }) => document.id === event.id)?.procedure ?? null;
        this.screenName = 'procedure';
        break;
      case 'setting-changed':
        this.settings = { ...this.settings, [event.key]: event.value };
        await this.parts.store.saveSetting('settings', this.settings);
        break;
      case 'export':
        if (event.as === 'print') this.parts.print();
        break;
      default:
        // Screens whose events are not answered yet say so rather than doing nothing.
        break;
    }
    this.changed();
  }

  private async start(): Promise<void> {
    const opened = await this.parts.openSound(this.settings);
    this.sound = opened.ok ? opened.value : this.parts.withoutSound();
    if (!opened.ok) this.trouble('sound', this.say('sound-blocked'));
    this.parts.keepAwake();
    this.sound.voice.on((e) => {
      if (e.type === 'sound-on' || e.type === 'sound-off') {
        this.speaking = e.type === 'sound-on';
        this.changed();
      }
    });
    // The voice is fetched now, while the person chooses a job, and never before the first paint.
    this.sound.voice.prepare([]);
  }

  private host(): DeskHost {
    const { store, hash, clock, newId, tongue, after } = this.parts;
    const sound = this.sound ?? this.parts.withoutSound();
    return {
      store,
      hash,
      clock,
      newId,
      tongue,
      after,
      session: this.session,
      ...sound,
      perform: (effect) => this.perform(effect),
    };
  }

  private seat(opened: Result<OpenJob, OpenFault>): void {
    if (!opened.ok) {
      this.trouble('job', faultText(opened.error));
      return;
    }
    this.open?.desk.close();
    this.open = opened.value;
    const { desk, greeting } = opened.value;
    desk.subscribe(() => {
      if (desk.job.status === 'closed') void this.parts.store.saveCard({ ...opened.value.card, closed: true });
      this.changed();
    });
    desk.start(greeting);
    this.screenName = 'bench';
  }

  private press(rule: Parameters<typeof commandAtCursor>[1]): void {
    const desk = this.open?.desk;
    const c = desk && commandAtCursor(desk.job, rule);
    if (desk && c) desk.press(c, desk.snapshot.live.commands.some((l) => l.rule === rule) ? rule : 'stop');
  }

  /** Push-to-talk: the microphone is open only while the pedal is down. */
  private pedal(down: boolean): void {
    this.shut = !down && this.settings.talk === 'pedal';
    if (down) this.sound?.recogniser.unmute();
    else if (this.settings.talk === 'pedal') this.sound?.recogniser.mute();
  }

  private perform(effect: Effect): void {
    if (effect === 'make-hand-over' && this.open) this.changed();
  }

  private async readJobs(): Promise<void> {
    const rows = await this.parts.store.jobs();
    if (rows.ok) this.jobs = rows.value;
    this.changed();
  }

  private trouble(id: string, text: string): void {
    this.notices = [...this.notices.filter((n) => n.id !== id), { id, kind: 'trouble', text }];
  }

  private changed(): void {
    for (const listener of this.listeners) listener();
  }
}

const faultText = (fault: OpenFault): string => {
  switch (fault.code) {
    case 'procedure-broken':
      return fault.issues.map((i) => `${i.file}:${i.line}:${i.column} ${i.message} ${i.mend}`).join('\n');
    case 'log-damaged':
      return `log-damaged ${fault.at}`;
    case 'store':
      return fault.fault.code;
  }
};

function troubleCode(fault: string) {
  return fault === 'microphone-refused' || fault === 'microphone-missing' || fault === 'microphone-lost'
    ? fault
    : ('recogniser-failed' as const);
}
