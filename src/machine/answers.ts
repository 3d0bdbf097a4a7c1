import type { EntryBody } from '../core/job/entry';
import type { Reply } from '../core/phrasing/reply';
import type { Voice } from '../core/ports';
import type { Phrased } from './desk-parts';

type Outside = {
  readonly voice: Voice;
  readonly phrase: (replies: readonly Reply[]) => Phrased;
  readonly note: (body: EntryBody) => void;
  readonly changed: () => void;
};

/** Everything the desk says: put into words, written down, spoken, and kept for "say again". */
export class Answers {
  said: Phrased | null = null;
  code = '';
  /** From the first word of a reply until nothing more is waiting to be said, gaps included. */
  talking = false;
  private utterance = 0;

  constructor(private readonly outside: Outside) {}

  /** Renders what will be said, or may be, in this order; nothing sounds yet. */
  prepare(answers: readonly (readonly Reply[])[]): void {
    const texts = answers.filter((replies) => replies.length > 0).map((replies) => this.outside.phrase(replies).spoken);
    if (texts.length > 0) this.outside.voice.prepare(texts);
  }

  /** An answer takes the place of what was still being said: whoever spoke has moved on from it. */
  answer(replies: readonly Reply[]): void {
    if (replies.length === 0) return;
    if (this.talking) this.outside.voice.hush();
    this.tell(replies);
  }

  /** Something that is not an answer waits its turn. */
  tell(replies: readonly Reply[]): void {
    if (replies.length === 0) return;
    this.said = this.outside.phrase(replies);
    this.code = replies.map((r) => r.code).join(' ');
    if (replies.some((r) => r.code === 'pass-complete')) this.outside.voice.play('pass-complete');
    this.utter(this.said);
  }

  /** The last answer once more, word for word; nothing is decided. */
  again(): void {
    if (!this.said) return;
    this.outside.voice.hush();
    this.utter(this.said);
  }

  quiet(): void {
    this.talking = false;
    this.outside.changed();
  }

  private utter(said: Phrased): void {
    this.outside.note({ kind: 'said', code: this.code, text: said.shown });
    this.talking = true;
    this.outside.voice.say({ id: String(++this.utterance), text: said.spoken, priority: 'normal' });
    this.outside.changed();
  }
}
