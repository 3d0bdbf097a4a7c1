import type { Entry } from '../core/job/entry';
import { Listeners } from '../core/listeners';
import { reply } from '../core/phrasing/reply';
import { assertNever } from '../core/result';
import type { Screen } from '../ui/app';
import type { EarLineProps } from '../ui/ear-line';
import type { UiEvent } from '../ui/events';
import type { ClosingProps } from '../ui/jobs/closing-sheet';
import type { Notice } from '../ui/notices';
import type { Settings } from '../ui/setup/settings';
import type { OfflineState } from '../ui/setup/storage-setup';
import { bringFiles } from './bring-files';
import { Closing } from './closing';
import { earLine } from './ear-line';
import { beginTour, deleteEverything, performEffect, saveEverything } from './errands';
import { PorchWatch } from './porch/porch-watch';
import { RecordDesk } from './record/record-desk';
import { type Rooms, roomsOf } from './rooms';
import { screenOf } from './screens';
import { DEFAULT_SETTINGS, withVoice } from './setup/settings';
import { SettingsDesk } from './setup/settings-desk';
import type { ShellParts } from './shell-parts';
import { VoiceWatch } from './sound/voice-watch';
import { type Status, statusOf } from './status';
import { Whereabouts } from './whereabouts';

/** The waits that run down are drawn anew this often; nothing else depends on it. */
const TICK_MS = 1000;

/** Hands everything done on a screen to whoever answers it. It decides nothing itself. */
export class Shell {
  #offline: OfflineState = null;
  readonly #rooms: Rooms;
  readonly #record: RecordDesk;
  readonly #closing: Closing;
  readonly #where: Whereabouts;
  readonly #porch: PorchWatch;
  readonly #voices: VoiceWatch;
  readonly #settings: SettingsDesk;
  readonly #listeners = new Listeners<void>();

  constructor(private readonly parts: ShellParts) {
    this.#settings = new SettingsDesk(parts.store, (settings) => this.#use(settings));
    const faster = (steps: number): void => void this.#settings.faster(steps);
    this.#rooms = roomsOf(parts, {
      settings: () => this.settings,
      perform: (effect) =>
        void performEffect(effect, this.#rooms, { faster, show: (rule) => this.#where.show(rule) }).then(() =>
          this.#changed(),
        ),
      change: (settings) => this.#settings.change(settings),
      changed: () => this.#changed(),
    });
    this.#record = new RecordDesk(this.#rooms, parts);
    this.#closing = new Closing({ ...this.#rooms, clock: parts.clock, tongue: parts.tongue });
    this.#where = new Whereabouts(this.#rooms, this.#record, parts);
    this.#porch = new PorchWatch(this.#rooms, parts, {
      settings: () => this.settings,
      answer: (event) => this.#answer(event).then(() => this.#changed()),
      faster,
      changed: () => this.#changed(),
    });
    this.#voices = new VoiceWatch(this.#rooms, parts, () => this.settings);
    this.#rooms.sound.voice.on(({ type }) => {
      if (type === 'sound-on' || type === 'sound-off') this.#changed();
    });
  }

  /** Reads what this machine has. Nothing of it is needed for the first paint. */
  async load(): Promise<void> {
    const { jobs, library, storage, models } = this.#rooms;
    await this.#settings.load();
    await jobs.look();
    this.#changed();
    // What a job is worked with is there before anybody has chosen one, as a rule.
    void import('./job/job-desk');
    await library.load();
    await storage.keep();
    await models.look();
    await this.#voices.look();
    this.#tick();
  }

  subscribe(listener: () => void): () => void {
    return this.#listeners.add(listener);
  }

  get settings(): Settings {
    return this.#settings.now;
  }

  get jobOpen(): boolean {
    return this.#rooms.seat.open !== null;
  }

  get shownNotices(): readonly Notice[] {
    return this.#rooms.notices.shown;
  }

  get closing(): ClosingProps | null {
    return this.#closing.shown();
  }

  /** The open job's log so far. */
  get entries(): readonly Entry[] {
    return this.#rooms.seat.entries;
  }

  status(): Status {
    return statusOf(this.#rooms, this.#porch.view);
  }

  screen(): Screen {
    const shown = {
      name: this.#where.screen,
      settings: this.settings,
      record: this.#record,
      systemVoices: this.#voices.choices,
      acknowledgements: this.#where.acknowledgements,
      offline: this.#offline,
    };
    return screenOf(shown, this.#rooms, this.parts);
  }

  earLine(): EarLineProps | null {
    const isOnBench = this.jobOpen && this.#where.screen === 'bench';
    return isOnBench ? null : earLine(this.#rooms, this.#porch.view, this.parts.tongue);
  }

  /** What the browser has kept of the program for a day without a network. */
  offline(state: OfflineState): void {
    this.#offline = state;
    this.#changed();
  }

  readonly on = (event: UiEvent): void => {
    void this.#answer(event).then(() => this.#changed());
  };

  async #answer(event: UiEvent): Promise<void> {
    const { jobs, seat, notices, talk, library, procedures, imports, storage, sound, setup } = this.#rooms;
    // These come from inside a tap or a key, where the browser lets sound begin.
    if (NEEDS_SOUND.has(event.type)) await this.#openSound();
    switch (event.type) {
      case 'start-tapped':
        return;
      case 'open-screen':
        return this.#where.go(event.name);
      case 'notice-dismissed':
        return notices.clear(event.id);
      case 'begin-job':
        return this.#where.toBench(await jobs.begin(event.procedure, event.machine, event.who));
      case 'rehearse':
        return this.#where.toBench(await jobs.rehearse(event.procedure, this.settings.people[0]));
      case 'begin-tour':
        return this.#where.toBench(await beginTour(this.#rooms, this.parts.tongue.profile.tour));
      case 'end-tour':
        await seat.leave();
        notices.clear('rehearsal');
        return this.#where.go('start');
      case 'resume-job':
        return this.#where.toBench(await jobs.resume(event.id), event.id);
      case 'brief-job':
        return this.#where.toBench(await jobs.command(event.id, 'tell-brief'), event.id);
      case 'hand-over-job':
        return this.#where.toBench(await jobs.command(event.id, 'hand-over'), event.id);
      case 'ask-closing':
        if (seat.open?.card.id === event.id) return this.#closing.ask();
        return this.#where.toBench(await jobs.command(event.id, 'close-job'), event.id);
      case 'put-closing-away':
        return this.#closing.putAway();
      case 'close-job':
        return this.#where.toBench(await jobs.command(event.id, 'close-job'), event.id);
      case 'delete-job':
        this.#record.forget(event.id);
        return jobs.remove(event.id);
      case 'command':
        return this.jobOpen ? jobs.press(event.command) : this.#porch.press(event.command);
      case 'use-wrench':
        return jobs.use(event.wrench);
      case 'typed':
        return seat.open?.desk.type(event.words);
      case 'tapped':
        return seat.open?.desk.tap(event.words, event.revision);
      case 'pedal':
        return talk.pedal(event.down);
      case 'open-record':
        return this.#where.toRecord(event.job);
      case 'export':
        return this.#record.export(event);
      case 'play-clip':
        return this.#record.showClip(event.clip);
      case 'keep-clips':
        return seat.open ? this.#rooms.clips.keepAgain(seat.open) : undefined;
      case 'import-files':
        if (await bringFiles(event, this.#rooms)) this.#where.screen = 'procedure';
        return;
      case 'settle-fork':
        await (await imports()).settle(event.keep);
        return jobs.look();
      case 'open-procedure':
        procedures.open(event.id);
        this.#where.screen = 'procedure';
        return;
      case 'show-card':
        await procedures.openCard(event.procedure);
        this.#where.screen = 'procedure';
        return;
      case 'print':
        // Not while the page that asks for it is being drawn: printing draws it again.
        this.parts.after(0, () => this.parts.print());
        return;
      case 'remove-procedure':
        return library.remove(event.id);
      case 'setting-changed':
        await this.#settings.change(withVoice({ ...this.settings, [event.key]: event.value }, this.#voices.choices));
        if (event.key === 'language') return this.#changeLanguage();
        return event.key === 'wrenches' ? seat.wrenchesChanged() : undefined;
      case 'choose-microphone':
        return this.#settings.change({ ...this.settings, microphone: event.id, microphoneName: event.name });
      // Our own voice is neither the room's noise nor a person's words.
      case 'check-microphone':
        sound.voice.hush();
        return (await setup.desk()).checks.checkMicrophone();
      case 'check-camera':
        return (await setup.desk()).camera.check();
      case 'check-noise':
        sound.voice.hush();
        return (await setup.desk()).checks.checkNoise();
      case 'reading-open':
      case 'reading-begin':
      case 'reading-skip':
      case 'reading-close':
      case 'delete-voice':
        return (await setup.desk()).voices.answer(event);
      case 'try-voice': {
        const { spoken } = this.parts.tongue.phrase([reply('demonstration', {})]);
        sound.voice.hush();
        return sound.voice.say({ id: 'try', text: spoken, priority: 'urgent' });
      }
      case 'keep-storage':
        return storage.keep();
      case 'export-everything':
        return saveEverything(this.#rooms);
      case 'delete-everything':
        if (await deleteEverything(this.#rooms)) await this.#settings.change(DEFAULT_SETTINGS);
        return;
      default:
        assertNever(event);
    }
  }

  /** Everything is made anew in it, which needs the page; never under a job, whose words are those of its document. */
  #changeLanguage(): void {
    const { seat, notices, say } = this.#rooms;
    if (seat.open) notices.news('language', say('language-next-start'));
    else this.parts.reload();
  }

  async #openSound(): Promise<void> {
    const { sound, notices, say } = this.#rooms;
    if (sound.isOpen) return;
    if (await sound.open()) notices.clear('sound');
    else notices.trouble('sound', say('sound-blocked'));
    this.parts.keepAwake();
  }

  #use({ talk }: Settings): void {
    this.#rooms.talk.choose(talk === 'pedal');
    this.#rooms.sound.apply();
  }

  #tick(): void {
    this.#changed();
    this.parts.after(TICK_MS, () => this.#tick());
  }

  #changed(): void {
    this.#porch.attend(this.#where.screen);
    this.#listeners.tell();
  }
}

const NEEDS_SOUND: ReadonlySet<UiEvent['type']> = new Set([
  'start-tapped',
  'begin-job',
  'begin-tour',
  'rehearse',
  'resume-job',
  'brief-job',
  'hand-over-job',
  'ask-closing',
  'close-job',
  'check-microphone',
  'check-noise',
  'reading-begin',
  'try-voice',
]);
