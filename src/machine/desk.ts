import { type Actor, createActor } from 'xstate';
import { type Command, commandOf } from '../core/job/command';
import type { Decision, Effect } from '../core/job/decision';
import { durability, type Entry, type EntryBody, type Moment } from '../core/job/entry';
import type { Job } from '../core/job/job';
import { offersOf } from '../core/job/offers';
import { revisionOf } from '../core/job/revision';
import type { LiveGrammar, Meaning, Offer } from '../core/language/grammar';
import { list, type Reply, reply, text } from '../core/phrasing/reply';
import type { Clock, Recogniser, RecogniserEvent, Voice } from '../core/ports';
import { assertNever, type Result } from '../core/result';
import { earView } from './ear-view';
import { machineFor, type RepairMachine } from './machine';
import { TimerWatch } from './timer-watch';

export type Phrased = { readonly spoken: string; readonly shown: string };

/** What the desk is built from. Everything outside comes in here; the desk itself touches nothing else. */
export type DeskParts = {
  readonly job: Job;
  readonly entries: readonly Entry[];
  readonly recogniser: Recogniser;
  readonly voice: Voice;
  readonly clock: Clock;
  readonly session: string;
  readonly who: string;
  readonly record: (
    bodies: readonly EntryBody[],
    stamp: Moment & { readonly who: string },
  ) => { readonly entries: readonly Entry[]; readonly written: Promise<Result<void, unknown>> };
  readonly liveGrammar: (offers: readonly Offer[], revision: string) => LiveGrammar;
  readonly interpret: (live: LiveGrammar, words: string) => Meaning;
  /** A few sentences that can be said now, the likeliest first. */
  readonly examples: (live: LiveGrammar) => readonly string[];
  readonly phrase: (replies: readonly Reply[]) => Phrased;
  /** Effects that need more than the desk has: recording a note, taking a picture, making a hand-over file, ... */
  readonly perform: (effect: Effect) => void;
  readonly after: (ms: number, run: () => void) => () => void;
};

export type HeardView = {
  readonly words: string;
  readonly score: number;
  readonly did: 'command' | 'rejected';
  readonly outcome: string;
};

/** All that a screen or a test can see of a desk. */
export type DeskView = {
  readonly job: Job;
  readonly entries: readonly Entry[];
  readonly said: Phrased | null;
  readonly saidCode: string;
  readonly heard: HeardView | null;
  readonly ear: ReturnType<typeof earView>;
  readonly live: LiveGrammar;
  readonly earsOff: boolean;
  readonly notSaved: boolean;
  /** From the first word of a reply until nothing more is waiting to be said, gaps included. */
  readonly talking: boolean;
};

type Hand = 'voice' | 'touch' | 'typed';

/**
 * Where ear, machine, log and voice meet. Words become commands only under the revision they were asked under,
 * the machine decides, the log is written, and only then is anything confirmed.
 */
export class Desk {
  private readonly actor: Actor<RepairMachine>;
  private readonly listeners = new Set<() => void>();
  private readonly timers: TimerWatch;
  private readonly offs: (() => void)[] = [];
  private entries: readonly Entry[];
  private current: Job;
  private live: LiveGrammar;
  private view: DeskView;
  private earsOff = false;
  private notSaved = false;
  private talking = false;
  /** Asked to say again once already since the last command: it does not nag. */
  private hasAskedAgain = false;
  private inFlight: Promise<unknown> = Promise.resolve();
  private utterance = 0;

  constructor(private readonly parts: DeskParts) {
    this.entries = parts.entries;
    this.current = parts.job;
    const machine = machineFor(parts.job.plan.procedure).provide({
      actions: {
        write: (_, { decision }) => this.write(decision),
        speak: (_, { replies }) => this.speak(replies),
        perform: (_, { effects }) => {
          for (const effect of effects) this.perform(effect);
        },
        arm: (_, { job }) => {
          this.current = job;
          this.arm();
        },
        askAgain: () => this.speak([reply('say-again', {})]),
        sayNotSaved: () => this.failedToSave(),
      },
    });
    this.actor = createActor(machine, { input: { job: parts.job } });
    this.live = this.liveNow();
    this.timers = new TimerWatch(
      parts.after,
      () => this.now(),
      (say) => this.timerOver(say),
    );
    this.view = this.look(null, '', null, earView(null, { type: 'ready', msToLoad: 0 }));
  }

  /** Opens the microphone, arms the grammar of the place and says where the job is. */
  start(greeting: readonly Reply[]): void {
    this.actor.start();
    this.offs.push(
      this.parts.recogniser.on((event) => this.hear(event)),
      this.parts.voice.on((event) => {
        // It never hears itself: deaf from before our own sound leaves the speaker until after it has.
        if (event.type === 'sound-on') this.parts.recogniser.mute();
        if (event.type === 'sound-off') this.parts.recogniser.unmute();
        if (event.type === 'quiet') {
          this.talking = false;
          this.refresh({});
        }
      }),
    );
    this.parts.recogniser.start();
    this.arm();
    if (greeting.length > 0) this.speak(greeting);
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

  look(said: Phrased | null, saidCode: string, heard: HeardView | null, ear: DeskView['ear']): DeskView {
    const { live, entries, earsOff, notSaved, talking } = this;
    return { job: this.job, entries, said, saidCode, heard, ear, live, earsOff, notSaved, talking };
  }

  get snapshot(): DeskView {
    return this.view;
  }

  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** Everything written and answered that was under way. For hosts that must wait, like the command line. */
  async idle(): Promise<void> {
    for (let seen: Promise<unknown> | null = null; seen !== this.inFlight; ) {
      seen = this.inFlight;
      await seen;
    }
  }

  /** A command from a button, a key or a pedal: the same road as a spoken one. */
  press(c: Command, label: string): void {
    this.give(c, label, 1, 'touch');
  }

  type(words: string): void {
    this.take(words, 1, 'typed');
  }

  /** Something that happened outside words, e.g. a recorded note. */
  report(bodies: readonly EntryBody[], replies: readonly Reply[]): void {
    this.actor.send({ type: 'work.reported', entries: bodies, replies });
  }

  /** Says something that is not an answer: a fault of the microphone, a greeting. */
  tell(replies: readonly Reply[]): void {
    this.speak(replies);
  }

  private now(): Moment {
    return { at: this.parts.clock.wall(), mono: this.parts.clock.mono(), session: this.parts.session };
  }

  private liveNow(): LiveGrammar {
    const job = this.job;
    const offers = offersOf(job);
    const heardOffers = this.earsOff ? offers.filter((o) => o.rule === 'stop' || o.rule === 'ears-on') : offers;
    return this.parts.liveGrammar(heardOffers, `${revisionOf(job)}/${this.earsOff ? 'off' : 'on'}`);
  }

  private arm(): void {
    this.live = this.liveNow();
    this.parts.recogniser.arm(this.live);
    this.timers.watch(this.job);
    this.refresh({});
  }

  private hear(event: RecogniserEvent): void {
    switch (event.type) {
      case 'heard':
        if (event.revision === this.live.revision) this.take(event.words, event.score, 'voice');
        else this.reject(event.words, event.score, 'stale', [reply('say-again', {})]);
        break;
      case 'rejected':
        this.reject(event.words, event.score, event.why, ASK_AGAIN.has(event.why) ? [reply('say-again', {})] : []);
        break;
      case 'failed':
        this.speak([reply(faultReply(event.code), {})]);
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
    if (event.type === 'heard' || event.type === 'rejected') this.parts.voice.resume();
    this.refresh({ ear: earView(this.view.ear, event) });
  }

  private take(words: string, score: number, by: Hand): void {
    const meaning = this.parts.interpret(this.live, words);
    switch (meaning.kind) {
      case 'command': {
        const c = commandOf(meaning.rule, meaning.slots);
        if (c) this.give(c, words, score, by);
        else this.reject(words, score, 'not-a-command', []);
        break;
      }
      case 'almost':
        this.reject(words, score, 'almost', [reply('almost', { given: text(meaning.given) })]);
        break;
      case 'ambiguous':
        this.reject(words, score, 'ambiguous', [reply('say-again', {})]);
        break;
      case 'nothing':
        this.reject(words, score, 'not-a-command', [reply('say-again', {})]);
        break;
      default:
        assertNever(meaning);
    }
  }

  private give(c: Command, words: string, score: number, by: Hand): void {
    this.hasAskedAgain = false;
    this.note({ kind: 'heard', words, score, by, command: c.rule });
    if (by === 'voice') this.parts.voice.play('heard');
    this.refresh({ heard: { words, score, did: 'command', outcome: c.rule } });
    switch (c.rule) {
      case 'say-again':
        this.speakAgain();
        break;
      case 'tell-words':
        this.speak([reply('words-now', { words: list(this.parts.examples(this.live)) })]);
        break;
      default:
        this.actor.send({ type: 'command.given', command: c, now: this.now() });
    }
  }

  /** Nothing happens to the job. It is written down as heard and rejected, and asked back at most once in a row. */
  private reject(words: string, score: number, why: string, replies: readonly Reply[]): void {
    this.note({ kind: 'rejected', words, score, why });
    this.refresh({ heard: { words, score, did: 'rejected', outcome: why } });
    if (replies.length === 0) return;
    if (this.hasAskedAgain) {
      this.parts.voice.play('not-understood');
      return;
    }
    this.hasAskedAgain = true;
    this.speak(replies);
  }

  private write(decision: Decision): void {
    // Rendering may start before the write; nothing is played before it is durable.
    this.parts.voice.prepare([this.parts.phrase(decision.replies).spoken]);
    const { entries, written } = this.parts.record(decision.entries, { ...this.now(), who: this.parts.who });
    this.entries = [...this.entries, ...entries];
    const answer = (isWritten: boolean): void =>
      this.actor.send(isWritten ? { type: 'log.written', entries, decision } : { type: 'log.failed' });
    // A question that may be asked again promises nothing, so it does not wait for the disk.
    if (decision.entries.every((body) => durability(body) === 'relaxed')) answer(true);
    else this.follow(written.then((outcome) => answer(outcome.ok)));
  }

  private note(body: EntryBody): void {
    const { entries } = this.parts.record([body], { ...this.now(), who: this.parts.who });
    this.entries = [...this.entries, ...entries];
  }

  private speak(replies: readonly Reply[]): void {
    const first = replies[0];
    if (!first) return;
    const said = this.parts.phrase(replies);
    const code = replies.map((r) => r.code).join(' ');
    this.note({ kind: 'said', code, text: said.shown });
    this.refresh({ said, saidCode: code });
    if (replies.some((r) => r.code === 'pass-complete')) this.parts.voice.play('pass-complete');
    this.utter(said);
  }

  /** The last answer once more, word for word; nothing is decided. */
  private speakAgain(): void {
    const { said, saidCode } = this.view;
    if (!said) return;
    this.note({ kind: 'said', code: saidCode, text: said.shown });
    this.utter(said);
  }

  private utter(said: Phrased): void {
    this.talking = true;
    this.refresh({});
    this.parts.voice.say({ id: String(++this.utterance), text: said.spoken, priority: 'urgent' });
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

  private failedToSave(): void {
    this.notSaved = true;
    this.parts.voice.play('saved-not');
    this.speak([reply('not-saved', {})]);
  }

  private timerOver(say: string): void {
    this.parts.voice.play('timer-up');
    this.speak([reply('timer-over', { timer: text(say) })]);
  }

  private follow(work: Promise<unknown>): void {
    this.inFlight = Promise.all([this.inFlight, work]);
  }

  private refresh(change: Partial<Pick<DeskView, 'said' | 'saidCode' | 'heard' | 'ear'>>): void {
    const { said, saidCode, heard, ear } = { ...this.view, ...change };
    this.view = this.look(said, saidCode, heard, ear);
    for (const listener of this.listeners) listener();
  }
}

/** Rejections worth a word back: something like a command was said. Other speech and noise are left alone. */
const ASK_AGAIN: ReadonlySet<string> = new Set(['score', 'stale', 'not-a-command', 'ambiguous']);

function faultReply(code: (RecogniserEvent & { readonly type: 'failed' })['code']) {
  switch (code) {
    case 'microphone-refused':
    case 'microphone-missing':
    case 'microphone-lost':
      return code;
    default:
      return 'recogniser-failed' as const;
  }
}
