import type { Command } from '../core/job/command';
import type { EntryBody } from '../core/job/entry';
import type { LiveGrammar, Offer } from '../core/language/grammar';
import { type Reply, reply } from '../core/phrasing/reply';
import type { RecogniserEvent, RecogniserFault } from '../core/ports';
import { assertNever } from '../core/result';
import type { Answers } from './answers';
import type { DeskParts, Hand, HeardView } from './desk-parts';
import { EAR_AT_FIRST, earView, faultReply } from './ear-view';
import { type Hearing, hearing, staleHearing, turnedAway } from './hearing';

/** What the ear asks of the desk it belongs to. */
export type EarHost = {
  /** What can be said now, and the revision that keys what words mean. */
  readonly offers: () => readonly Offer[];
  readonly revision: () => string;
  readonly answers: Pick<Answers, 'answer' | 'tell'>;
  readonly note: (body: EntryBody) => void;
  readonly obey: (c: Command) => void;
  /** Where things stand, in words. */
  readonly standing: () => readonly Reply[];
  readonly changed: () => void;
};

/** The desk's ear: what can be said now, and what becomes of what is said. Words count only under the revision they were asked under. */
export class DeskEar {
  live: LiveGrammar;
  heard: HeardView | null = null;
  state = EAR_AT_FIRST;
  /** Only "stop" and what turns it on again are listened for. */
  isOff = false;
  /** Asked to say again once already since the last command: it does not nag. */
  private hasAskedAgain = false;

  constructor(
    private readonly parts: Pick<DeskParts, 'recogniser' | 'voice' | 'liveGrammar' | 'interpret'>,
    private readonly host: EarHost,
  ) {
    this.live = this.liveNow();
  }

  arm(): void {
    this.live = this.liveNow();
    this.parts.recogniser.arm(this.live);
  }

  /** Closed ears hear nothing, and hands still work: everything that makes sense here can be written. */
  type(words: string): void {
    this.take(hearing(this.parts.interpret(this.whole(), words)), words, 1, 'typed');
  }

  /** A sentence tapped on the screen: as if it had been written, but only under the revision it was shown under. */
  tap(words: string, revision: string): void {
    const { interpret } = this.parts;
    const isFresh = revision === this.host.revision();
    const what = isFresh ? hearing(interpret(this.whole(), words)) : staleHearing(this.live, words, interpret);
    this.take(what, words, 1, 'touch');
  }

  hear(event: RecogniserEvent): void {
    const before = this.state;
    this.state = earView(before, event);
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
        // Trying again in vain is no news.
        if (before.fault !== event.code) this.host.answers.tell([reply(faultReply(event.code), {})]);
        break;
      case 'partial':
        // Somebody is speaking: what we would say next waits for them.
        this.parts.voice.hold();
        break;
      case 'ready':
        if (before.fault !== null) this.host.answers.tell(this.recovered(before.fault));
        break;
      case 'armed':
      case 'level':
        break;
      default:
        assertNever(event);
    }
    this.host.changed();
  }

  give(c: Command, words: string, score: number, by: Hand): void {
    this.hasAskedAgain = false;
    this.host.note({ kind: 'heard', words, score, by, command: c.rule });
    this.heard = { words, score, by, did: 'command', outcome: c.rule };
    if (by === 'voice') this.parts.voice.play('heard');
    this.host.obey(c);
    this.host.changed();
  }

  private take(what: Hearing, words: string, score: number, by: Hand): void {
    if (what.kind === 'command') this.give(what.command, words, score, by);
    else this.reject(what, words, score, by);
  }

  /**
   * Nothing happens to the job. It is written down as heard and rejected, and asked back at most once in a row; a hand
   * means what it sends, and is told each time.
   */
  private reject(what: Hearing & { readonly kind: 'rejected' }, words: string, score: number, by: Hand): void {
    const { why, replies } = what;
    this.host.note({ kind: 'rejected', words, score, why });
    this.heard = { words, score, by, did: 'rejected', outcome: why };
    if (replies.length === 0) return;
    if (this.hasAskedAgain && by === 'voice') {
      this.parts.voice.play('not-understood');
      return;
    }
    this.hasAskedAgain = true;
    this.host.answers.answer(replies);
  }

  /** With the sound an answer may have been cut off, so it is said again where the job stands. */
  private recovered(from: RecogniserFault): readonly Reply[] {
    return [reply('hears-again', {}), ...(from === 'audio-blocked' ? this.host.standing() : [])];
  }

  private liveNow(): LiveGrammar {
    const offers = this.host.offers();
    const heardOffers = this.isOff ? offers.filter((o) => o.rule === 'stop' || o.rule === 'ears-on') : offers;
    return this.parts.liveGrammar(heardOffers, `${this.host.revision()}/${this.isOff ? 'off' : 'on'}`);
  }

  /** All that can be said here, whatever is listened for. */
  private whole(): LiveGrammar {
    const { offers, revision } = this.host;
    return this.isOff ? this.parts.liveGrammar(offers(), revision()) : this.live;
  }
}
