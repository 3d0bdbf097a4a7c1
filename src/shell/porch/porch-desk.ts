import { type Command, command } from '../../core/job/command';
import { passAt } from '../../core/job/decide/at-pass';
import { brief } from '../../core/job/decide/tell/place';
import { fold } from '../../core/job/evolve';
import { planOf } from '../../core/job/plan';
import { list, type Reply, reply } from '../../core/phrasing/reply';
import { answerAtPorch, type PorchAct } from '../../core/porch/answer';
import { porchOffers, porchTaught } from '../../core/porch/offers';
import type { Asked, Porch } from '../../core/porch/porch';
import type { Recogniser, Voice, VoiceEvent } from '../../core/ports';
import { assertNever } from '../../core/result';
import type { Tongue } from '../../core/tongue';
import { Answers } from '../../machine/answers';
import { DeskEar } from '../../machine/desk-ear';
import type { DeskView } from '../../machine/desk-parts';
import { EAR_AT_FIRST } from '../../machine/ear-view';
import type { ScreenName, UiEvent } from '../../ui/events';
import { readJob } from '../job/job-log';
import type { ShellParts } from '../shell-parts';

/** All that a screen or a test can see of it. */
export type PorchView = Pick<DeskView, 'ear' | 'heard' | 'said' | 'live' | 'earsOff' | 'talking'>;

export type PorchHost = {
  readonly parts: Pick<ShellParts, 'store' | 'hash' | 'clock'>;
  readonly session: string;
  readonly tongue: Tongue;
  readonly recogniser: Recogniser;
  readonly voice: Voice;
  readonly isSounding: () => boolean;
  readonly stands: () => Omit<Porch, 'asked'>;
  /** What a job needs besides its procedure, as far as it is known: the machine, and who works. */
  readonly begun: (procedure: string) => { readonly machine: string; readonly who: string };
  /** The same as if it had been tapped; false where a job should be open after it and none is. */
  readonly perform: (event: UiEvent) => Promise<boolean>;
  readonly faster: (steps: number) => void;
  readonly changed: () => void;
};

/**
 * Listens where no job is open. Ear, refusals and answers are those of the desk; what is heard here is written nowhere,
 * because there is no log to write it in.
 */
export class PorchDesk {
  readonly #answers: Answers;
  readonly #ear: DeskEar;
  #offs: readonly (() => void)[] = [];
  #asked: Asked | null = null;
  #armedFor = '';
  #turns = 0;
  #isActing = false;

  constructor(private readonly host: PorchHost) {
    const { voice, tongue, recogniser, changed } = host;
    const unwritten = (): void => undefined;
    this.#answers = new Answers({ voice, phrase: tongue.phrase, note: unwritten, changed });
    this.#ear = new DeskEar(
      { recogniser, voice, liveGrammar: tongue.liveGrammar, interpret: tongue.interpret },
      {
        offers: () => porchOffers(this.#porch()),
        revision: () => `porch/${this.#turns}`,
        answers: this.#answers,
        note: unwritten,
        obey: (c) => this.#obey(c),
        standing: () => [],
        changed,
      },
    );
  }

  get isOpen(): boolean {
    return this.#offs.length > 0;
  }

  get view(): PorchView {
    const { state: ear, heard, live, isOff: earsOff } = this.#ear;
    const { said, talking } = this.#answers;
    return { ear, heard, said, live, earsOff, talking };
  }

  open(): void {
    const { recogniser, voice } = this.host;
    this.#offs = [recogniser.on((event) => this.#ear.hear(event)), voice.on((event) => this.#sound(event))];
    this.#armedFor = '';
    this.#ear.state = EAR_AT_FIRST;
    // Whoever sat at a job may have left in the middle of a reply.
    if (this.host.isSounding()) recogniser.mute();
    else recogniser.unmute();
    recogniser.start();
    this.look();
  }

  /** A job is open, or there is no sound: nothing that was asked counts any more. */
  close(): void {
    for (const off of this.#offs) off();
    this.#offs = [];
    this.#asked = null;
    this.#ear.heard = null;
    if (this.#answers.talking) this.host.voice.hush();
    this.#answers.talking = false;
  }

  /** What can be said follows the lists: a number means the line that has it now. */
  look(): void {
    const stands = JSON.stringify(this.#porch());
    if (stands === this.#armedFor) return;
    this.#armedFor = stands;
    this.#turns += 1;
    this.#ear.arm();
  }

  /** Somebody went elsewhere by hand: a question that was asked before is not answered from there. */
  forget(): void {
    this.#asked = null;
    this.look();
  }

  /** By a key: the same as by voice. */
  stop(): void {
    if (this.isOpen) this.#ear.give(command('stop'), 'stop', 1, 'touch');
  }

  #porch(): Porch {
    return { ...this.host.stands(), asked: this.#asked };
  }

  #obey(c: Command): void {
    switch (c.rule) {
      case 'say-again':
        this.#answers.again();
        break;
      case 'tell-words': {
        const words = porchTaught(this.host.tongue.examples(this.#ear.live));
        this.#answers.answer([reply('words-now', { words: list(words) })]);
        break;
      }
      default:
        // While a job is being opened only the talking can be stopped.
        if (this.#isActing && c.rule !== 'stop') this.#answers.answer([reply('say-again', {})]);
        else this.#decide(c);
    }
  }

  #decide(c: Command): void {
    const { replies, act, asked } = answerAtPorch(this.#porch(), c);
    this.#asked = asked;
    if (act) void this.#perform(act);
    this.#answers.answer(replies);
    this.look();
  }

  async #perform(act: PorchAct): Promise<void> {
    switch (act.do) {
      case 'hush':
        this.host.voice.hush();
        return;
      case 'ears-off':
      case 'ears-on':
        this.#ear.isOff = act.do === 'ears-off';
        this.#ear.arm();
        return;
      case 'slower':
      case 'faster':
        this.host.faster(act.do === 'faster' ? 1 : -1);
        return;
      case 'brief':
        this.#tell(await this.#brief(act.job));
        return;
      case 'show':
        return this.#go({ type: 'open-screen', name: SCREEN[act.screen] });
      case 'read':
        return this.#go({ type: 'open-record', job: act.job });
      case 'begin':
        return this.#go({ type: 'begin-job', procedure: act.procedure, ...this.host.begun(act.procedure) });
      case 'open':
        return this.#go({ type: 'resume-job', id: act.job });
      case 'tour':
        return this.#go({ type: 'begin-tour' });
      default:
        assertNever(act);
    }
  }

  async #go(event: UiEvent): Promise<void> {
    this.#isActing = true;
    try {
      if (!(await this.host.perform(event))) this.#tell(COULD_NOT);
    } finally {
      this.#isActing = false;
    }
  }

  /** What took a while to find out is told only where nobody sits at a job by now. */
  #tell(replies: readonly Reply[]): void {
    if (this.isOpen) this.#answers.answer(replies);
  }

  /** Told from the log as it is stored; the job is not opened for it. */
  async #brief(id: string): Promise<readonly Reply[]> {
    const { parts, tongue, session } = this.host;
    const read = await readJob(parts.store, parts.hash, id, tongue.profile.code);
    if (!read.ok || read.value.damage || read.value.procedure.language !== tongue.profile.code) return COULD_NOT;
    const job = fold(planOf(read.value.procedure), read.value.entries);
    return brief(job, passAt(job), { at: parts.clock.wall(), mono: parts.clock.mono(), session });
  }

  /** As at the desk: deaf from before our own sound leaves the speaker until after it has. */
  #sound(event: VoiceEvent): void {
    if (event.type === 'sound-on') this.host.recogniser.mute();
    if (event.type === 'sound-off') this.host.recogniser.unmute();
    if (event.type === 'quiet') this.#answers.quiet();
  }
}

const COULD_NOT: readonly Reply[] = [reply('could-not-open', {})];

const SCREEN: Readonly<Record<Extract<PorchAct, { readonly do: 'show' }>['screen'], ScreenName>> = {
  'show-jobs': 'jobs',
  'show-procedures': 'procedures',
  'show-setup': 'setup',
};
