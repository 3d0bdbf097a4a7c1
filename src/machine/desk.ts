import { type Actor, createActor } from 'xstate';
import { announce } from '../core/job/announce';
import type { Command } from '../core/job/command';
import { after } from '../core/job/decide/settle';
import type { Effect } from '../core/job/decision';
import type { EntryBody, Moment } from '../core/job/entry';
import type { Job } from '../core/job/job';
import { offersOf } from '../core/job/offers';
import { revisionOf } from '../core/job/revision';
import type { LiveGrammar } from '../core/language/grammar';
import { list, type Reply, reply, text } from '../core/phrasing/reply';
import type { RecogniserEvent, VoiceEvent } from '../core/ports';
import { assertNever } from '../core/result';
import { Answers } from './answers';
import { DeskLog } from './desk-log';
import type { DeskParts, DeskView, HeardView } from './desk-parts';
import { EAR_AT_FIRST, earView, faultReply } from './ear-view';
import { type Hearing, hearing, staleHearing, turnedAway } from './hearing';
import { likelyAnswers } from './likely-answers';
import { machineFor, type RepairMachine } from './machine';
import { TimerWatch } from './timer-watch';

type Hand = 'voice' | 'touch' | 'typed';

/**
 * Where ear, machine, log and voice meet. Words become commands only under the revision they were asked under,
 * the machine decides, the log is written, and only then is anything confirmed.
 */
export class Desk {
  private readonly actor: Actor<RepairMachine>;
  private readonly answers: Answers;
  private readonly log: DeskLog;
  private readonly listeners = new Set<() => void>();
  private readonly timers: TimerWatch;
  private readonly offs: (() => void)[] = [];
  private current: Job;
  private live: LiveGrammar;
  private heard: HeardView | null = null;
  private ear = EAR_AT_FIRST;
  private earsOff = false;
  /** Asked to say again once already since the last command: it does not nag. */
  private hasAskedAgain = false;

  constructor(private readonly parts: DeskParts) {
    this.current = parts.job;
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
        speak: (_, { replies }) => this.answers.answer(replies),
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
    this.live = this.liveNow();
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
      this.parts.recogniser.on((event) => this.hear(event)),
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
    const { job, heard, ear, live, earsOff } = this;
    const { entries, notSaved } = this.log;
    const { said, code, talking } = this.answers;
    return { job, entries, said, saidCode: code, heard, ear, live, earsOff, notSaved, talking };
  }

  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
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
    this.give(c, label, 1, 'touch');
  }

  type(words: string): void {
    this.take(hearing(this.parts.interpret(this.live, words)), words, 1, 'typed');
  }

  /** Something that happened outside words, e.g. a recorded note. */
  report(bodies: readonly EntryBody[], replies: readonly Reply[]): void {
    this.actor.send({ type: 'work.reported', entries: bodies, replies });
  }

  /** Says something that is not an answer: a fault of the microphone, a greeting. */
  tell(replies: readonly Reply[]): void {
    this.answers.tell(replies);
  }

  private now(): Moment {
    return { at: this.parts.clock.wall(), mono: this.parts.clock.mono(), session: this.parts.session };
  }

  private liveNow(): LiveGrammar {
    const offers = offersOf(this.current);
    const heardOffers = this.earsOff ? offers.filter((o) => o.rule === 'stop' || o.rule === 'ears-on') : offers;
    return this.parts.liveGrammar(heardOffers, `${revisionOf(this.current)}/${this.earsOff ? 'off' : 'on'}`);
  }

  private arm(): void {
    this.live = this.liveNow();
    this.parts.recogniser.arm(this.live);
    this.timers.watch(this.current);
    this.changed();
  }

  /** It never hears itself: deaf from before our own sound leaves the speaker until after it has. */
  private sound(event: VoiceEvent): void {
    if (event.type === 'sound-on') this.parts.recogniser.mute();
    if (event.type === 'sound-off') this.parts.recogniser.unmute();
    if (event.type !== 'quiet') return;
    this.answers.prepare(likelyAnswers(this.current, this.live, this.parts, this.now()));
    this.answers.quiet();
  }

  private hear(event: RecogniserEvent): void {
    this.ear = earView(this.ear, event);
    switch (event.type) {
      case 'heard': {
        this.parts.voice.resume();
        const { words, score, revision } = event;
        const isFresh = revision === this.live.revision;
        const { interpret } = this.parts;
        const what = isFresh ? hearing(interpret(this.live, words)) : staleHearing(this.live, words, interpret);
        this.take(what, words, score, 'voice');
        break;
      }
      case 'rejected':
        this.parts.voice.resume();
        this.take(turnedAway(event.why), event.words, event.score, 'voice');
        break;
      case 'failed':
        this.answers.tell([reply(faultReply(event.code), {})]);
        break;
      case 'partial':
        // Somebody is speaking: what we would say next waits for them.
        this.parts.voice.hold();
        break;
      case 'ready':
      case 'armed':
      case 'level':
        break;
      default:
        assertNever(event);
    }
    this.changed();
  }

  private take(what: Hearing, words: string, score: number, by: Hand): void {
    if (what.kind === 'command') this.give(what.command, words, score, by);
    else this.reject(words, score, what.why, what.replies);
  }

  private give(c: Command, words: string, score: number, by: Hand): void {
    this.hasAskedAgain = false;
    this.log.note({ kind: 'heard', words, score, by, command: c.rule });
    this.heard = { words, score, did: 'command', outcome: c.rule };
    if (by === 'voice') this.parts.voice.play('heard');
    switch (c.rule) {
      case 'say-again':
        this.answers.again();
        break;
      case 'tell-words':
        this.answers.answer([reply('words-now', { words: list(this.parts.examples(this.current)) })]);
        break;
      default:
        this.actor.send({ type: 'command.given', command: c, now: this.now() });
    }
    this.changed();
  }

  /** Nothing happens to the job. It is written down as heard and rejected, and asked back at most once in a row. */
  private reject(words: string, score: number, why: string, replies: readonly Reply[]): void {
    this.log.note({ kind: 'rejected', words, score, why });
    this.heard = { words, score, did: 'rejected', outcome: why };
    if (replies.length === 0) return;
    if (this.hasAskedAgain) {
      this.parts.voice.play('not-understood');
      return;
    }
    this.hasAskedAgain = true;
    this.answers.answer(replies);
  }

  private perform(effect: Effect): void {
    switch (effect) {
      case 'hush':
        this.parts.voice.hush();
        break;
      case 'ears-off':
      case 'ears-on':
        this.earsOff = effect === 'ears-off';
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
    for (const listener of this.listeners) listener();
  }
}
