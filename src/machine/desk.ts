import { type Actor, createActor } from 'xstate';
import { announce } from '../core/job/announce';
import type { Command } from '../core/job/command';
import { after } from '../core/job/decide/settle';
import type { Effect } from '../core/job/decision';
import type { EntryBody, Moment } from '../core/job/entry';
import type { Job } from '../core/job/job';
import { offersOf } from '../core/job/offers';
import { revisionOf } from '../core/job/revision';
import { Listeners } from '../core/listeners';
import { list, type Reply, reply, text } from '../core/phrasing/reply';
import type { VoiceEvent } from '../core/ports';
import { Answers } from './answers';
import { ClockWatch } from './clock-watch';
import { DeskEar } from './desk-ear';
import { DeskLog } from './desk-log';
import type { DeskParts, DeskView } from './desk-parts';
import { likelyAnswers } from './likely-answers';
import { machineFor, type RepairMachine } from './machine';
import { TimerWatch } from './timer-watch';

/**
 * Where ear, machine, log and voice meet. Words become commands only under the revision they were asked under,
 * the machine decides, the log is written, and only then is anything confirmed.
 */
export class Desk {
  private readonly actor: Actor<RepairMachine>;
  private readonly answers: Answers;
  private readonly log: DeskLog;
  private readonly listeners = new Listeners<void>();
  private readonly timers: TimerWatch;
  private readonly offs: (() => void)[] = [];
  private readonly ear: DeskEar;
  private readonly clocks: ClockWatch;
  private current: Job;
  /** What was asked last, in case something comes between it and its answer. */
  private question: readonly Reply[] = [];

  constructor(private readonly parts: DeskParts) {
    this.current = parts.job;
    this.clocks = new ClockWatch(this.now());
    this.answers = new Answers({
      voice: parts.voice,
      phrase: parts.phrase,
      note: (body) => this.log.note(body),
      changed: () => this.changed(),
    });
    const machine = machineFor(parts.job.plan.procedure).provide({
      actions: {
        write: (_, { decision }) => {
          // Rendering may start before the write; nothing is played before it is durable.
          this.answers.prepare([decision.replies]);
          this.log.write(decision);
        },
        speak: (_, { replies, verdict }) => {
          if (verdict === 'asked') this.question = replies;
          this.answers.answer(replies);
        },
        perform: (_, { effects }) => {
          for (const effect of effects) this.perform(effect);
        },
        arm: (_, { job }) => {
          this.current = job;
          this.arm();
        },
        askAgain: () => this.answers.answer([reply('say-again', {})]),
        sayNotSaved: () => this.failedToSave(),
      },
    });
    this.log = new DeskLog(parts, {
      plan: parts.job.plan,
      now: () => this.now(),
      send: (event) => this.actor.send(event),
      standAnew: () => this.standAnew(),
    });
    this.actor = createActor(machine, { input: { job: parts.job } });
    this.ear = new DeskEar(parts, {
      offers: () => offersOf(this.current),
      revision: () => revisionOf(this.current),
      answers: this.answers,
      note: (body) => this.log.note(body),
      obey: (c) => this.obey(c),
      standing: () => announce(this.current, this.now()),
      changed: () => this.changed(),
    });
    this.timers = new TimerWatch(
      parts.after,
      () => this.now(),
      (say) => this.timerOver(say),
    );
  }

  /** Opens the microphone, arms the grammar of the place and says where the job is. */
  start(greeting: readonly Reply[]): void {
    this.actor.start();
    this.offs.push(
      this.parts.recogniser.on((event) => this.ear.hear(event)),
      this.parts.voice.on((event) => this.sound(event)),
    );
    this.parts.recogniser.start();
    this.arm();
    this.answers.tell(greeting);
  }

  close(): void {
    for (const off of this.offs) off();
    this.timers.close();
    this.actor.stop();
  }

  get job(): Job {
    return this.current;
  }

  /** The machine's node as XState names it. */
  get node(): unknown {
    return this.actor.getSnapshot().value;
  }

  get snapshot(): DeskView {
    const { state: ear, heard, live, isOff: earsOff } = this.ear;
    const { entries, notSaved } = this.log;
    const { said, code, talking } = this.answers;
    return { job: this.current, entries, said, saidCode: code, heard, ear, live, earsOff, notSaved, talking };
  }

  subscribe(listener: () => void): () => void {
    return this.listeners.add(listener);
  }

  /** Everything written and answered that was under way. For hosts that must wait, like the command line. */
  idle(): Promise<void> {
    return this.log.idle();
  }

  /** Everything up to this entry is stored now, after some of it was not: what had been refused counts after all. */
  recovered(seq: number): void {
    this.log.recovered(seq);
  }

  /** A command from a button, a key or a pedal: the same road as a spoken one. */
  press(c: Command, label: string): void {
    this.ear.give(c, label, 1, 'touch');
  }

  type(words: string): void {
    this.ear.type(words);
  }

  tap(words: string, revision: string): void {
    this.ear.tap(words, revision);
  }

  /** Something that happened outside words, e.g. a recorded note. */
  report(bodies: readonly EntryBody[], replies: readonly Reply[]): void {
    this.actor.send({ type: 'work.reported', entries: bodies, replies: this.asWell(replies) });
  }

  /** What came of a command that others carry out: it takes the place of what is being said. */
  answer(replies: readonly Reply[]): void {
    this.answers.answer(replies);
  }

  /** The same where it came to nothing: a question that waited all the while is asked again. */
  excuse(replies: readonly Reply[]): void {
    this.answers.answer(this.asWell(replies));
  }

  /** Says something that is not an answer: a fault of the microphone, a greeting. */
  tell(replies: readonly Reply[]): void {
    this.answers.tell(replies);
  }

  /** A question that waits is asked again: its answer comes after other words than its own. */
  private asWell(replies: readonly Reply[]): readonly Reply[] {
    return this.current.pending && replies.length > 0 ? [...replies, ...this.question] : replies;
  }

  private now(): Moment {
    return { at: this.parts.clock.wall(), mono: this.parts.clock.mono(), session: this.parts.session };
  }

  private arm(): void {
    this.ear.arm();
    this.timers.watch(this.current);
    this.changed();
  }

  /** It never hears itself: deaf from before our own sound leaves the speaker until after it has. */
  private sound(event: VoiceEvent): void {
    if (event.type === 'sound-on') this.parts.recogniser.mute();
    if (event.type === 'sound-off') this.parts.recogniser.unmute();
    if (event.type !== 'quiet') return;
    this.answers.prepare(likelyAnswers(this.current, this.ear.live, this.parts, this.now()));
    this.answers.quiet();
    // Not sooner: an answer would cut it off.
    if (this.clocks.hasMoved(this.now())) this.answers.tell([reply('clock-moved', {})]);
  }

  /** What the desk answers itself; the rest the machine decides. */
  private obey(c: Command): void {
    switch (c.rule) {
      case 'say-again':
        this.answers.again();
        break;
      case 'tell-words':
        this.answers.answer([reply('words-now', { words: list(this.parts.teach(this.current)) })]);
        break;
      default:
        this.actor.send({ type: 'command.given', command: c, now: this.now() });
    }
  }

  private perform(effect: Effect): void {
    switch (effect) {
      case 'hush':
        this.parts.voice.hush();
        this.parts.perform(effect);
        break;
      case 'ears-off':
      case 'ears-on':
        this.ear.isOff = effect === 'ears-off';
        this.arm();
        break;
      default:
        this.parts.perform(effect);
    }
  }

  /** Nobody heard what those entries were answered with, so it is as after an interruption: said where it stands. */
  private standAnew(): void {
    const opened: readonly EntryBody[] = [{ kind: 'session-opened' }];
    const now = this.now();
    this.report(opened, [reply('caught-up', {}), ...announce(after(this.current, opened, now), now)]);
  }

  private failedToSave(): void {
    this.log.notSaved = true;
    this.parts.voice.play('saved-not');
    this.answers.answer([reply('not-saved', {})]);
  }

  private timerOver(say: string): void {
    this.parts.voice.play('timer-up');
    this.answers.tell([reply('timer-over', { timer: text(say) })]);
  }

  private changed(): void {
    this.listeners.tell();
  }
}
