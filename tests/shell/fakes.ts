import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import type { LiveGrammar } from '../../src/core/language/grammar';
import type { Recogniser, RecogniserEvent } from '../../src/core/ports';
import type { After } from '../../src/store/log-writer';
import { sayer } from '../../src/ui/words/say';
import { checkScreenWords } from '../../src/ui/words/words';

/** A recogniser that writes down what is asked of it and tells whatever a test wants. */
export class FakeEar implements Recogniser {
  readonly asked: string[] = [];
  readonly #listeners = new Set<(event: RecogniserEvent) => void>();
  readonly start = () => void this.asked.push('start');
  readonly arm = ({ revision }: LiveGrammar) => void this.asked.push(`arm ${revision}`);
  readonly mute = () => void this.asked.push('mute');
  readonly unmute = () => void this.asked.push('unmute');
  readonly close = () => void this.asked.push('close');
  readonly on = (listener: (event: RecogniserEvent) => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  tell(event: RecogniserEvent): void {
    for (const listener of this.#listeners) listener(event);
  }

  heard(revision: string, words = 'done'): void {
    this.tell({ type: 'heard', revision, words, score: 1, startFrame: 0, endFrame: 0 });
  }

  level(db: number, floorDb = -70): void {
    this.tell({ type: 'level', db, floorDb, clipped: false });
  }
}

export const grammar = (revision: string): LiveGrammar => ({ revision, commands: [], parts: {} });

/** A clock that a test moves by hand. */
export class HandClock {
  now = 0;
  #due: { readonly at: number; readonly run: () => void }[] = [];

  readonly after: After = (ms, run) => {
    const one = { at: this.now + ms, run };
    this.#due.push(one);
    return () => {
      this.#due = this.#due.filter((other) => other !== one);
    };
  };

  pass(ms: number): void {
    this.now += ms;
    const ready = this.#due.filter(({ at }) => at <= this.now);
    this.#due = this.#due.filter(({ at }) => at > this.now);
    for (const { run } of ready) run();
  }
}

const words = checkScreenWords(parse(readFileSync('grammars/en/screen.yaml', 'utf8')));
if (!words.ok) throw new Error(JSON.stringify(words.error));
export const say = sayer(words.value);
