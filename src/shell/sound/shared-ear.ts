import type { LiveGrammar } from '../../core/language/grammar';
import { Listeners } from '../../core/listeners';
import type { Recogniser, RecogniserEvent } from '../../core/ports';

/** Why nobody is listened to just now. The ear opens only when none is left. */
export type ShutBy = 'voice' | 'pedal' | 'clip';

type Listener = (event: RecogniserEvent) => void;

const LOAN = 'loan/';

/**
 * One ear for all who need it: the desk by right, a check in Setup or a note on loan. While it is lent, words go to the
 * borrower alone, so that nothing said to a check can move a job. The adapter behind it can be changed at any time.
 */
export class SharedEar implements Recogniser {
  readonly #listeners = new Listeners<RecogniserEvent>();
  readonly on = this.#listeners.add;
  readonly #shut = new Set<ShutBy>();
  #real: Recogniser;
  #off: () => void;
  #grammar: LiveGrammar | null = null;
  #loan: { readonly grammar: LiveGrammar; readonly listener: Listener } | null = null;
  #isStarted = false;
  #isMuted = false;
  /** Whether it hears, or why not: told again to whoever starts listening later. */
  #health: RecogniserEvent | null = null;
  #loans = 0;

  constructor(real: Recogniser) {
    this.#real = real;
    this.#off = real.on((event) => this.#receive(event));
  }

  /** Another adapter takes over where the last one stood. */
  swap(next: Recogniser): void {
    this.#off();
    this.#real.close();
    this.#real = next;
    this.#health = null;
    this.#off = next.on((event) => this.#receive(event));
    const grammar = this.#loan?.grammar ?? this.#grammar;
    if (grammar) next.arm(grammar);
    if (this.#isMuted) next.mute();
    if (this.#isStarted) next.start();
  }

  start(): void {
    if (this.#isStarted && this.#health) this.#listeners.tell(this.#health);
    this.#isStarted = true;
    this.#real.start();
  }

  arm(grammar: LiveGrammar): void {
    this.#grammar = grammar;
    if (!this.#loan) this.#real.arm(grammar);
  }

  mute(): void {
    this.shut('voice');
  }

  unmute(): void {
    this.open('voice');
  }

  shut(by: ShutBy): void {
    this.#shut.add(by);
    this.#apply();
  }

  open(by: ShutBy): void {
    this.#shut.delete(by);
    this.#apply();
  }

  isShutBy(by: ShutBy): boolean {
    return this.#shut.has(by);
  }

  /** Listens for this grammar only, until the answer gives the ear back. The last borrower wins. */
  borrow(grammar: LiveGrammar, listener: Listener): () => void {
    const loan = { grammar: { ...grammar, revision: `${LOAN}${++this.#loans}` }, listener };
    this.#loan = loan;
    if (!this.#isStarted) this.start();
    this.#real.arm(loan.grammar);
    this.#apply();
    return () => {
      if (this.#loan !== loan) return;
      this.#loan = null;
      this.#apply();
      if (this.#grammar) this.#real.arm(this.#grammar);
    };
  }

  close(): void {
    this.#off();
    this.#real.close();
    this.#listeners.clear();
  }

  /** A borrower was asked for by hand, so it listens without the pedal. */
  #apply(): void {
    const mute = this.#shut.has('voice') || this.#shut.has('clip') || (this.#shut.has('pedal') && !this.#loan);
    if (mute === this.#isMuted) return;
    this.#isMuted = mute;
    if (mute) this.#real.mute();
    else this.#real.unmute();
  }

  #receive(event: RecogniserEvent): void {
    const loan = this.#loan;
    if (event.type === 'ready' || event.type === 'failed') this.#health = event;
    if ('revision' in event) {
      const isOurs = event.revision.startsWith(LOAN);
      // What was asked for the other side of a loan, or for one that is over, is nobody's.
      if (isOurs !== (loan !== null)) return;
      if (loan) {
        if (event.revision === loan.grammar.revision) loan.listener(event);
        return;
      }
    }
    loan?.listener(event);
    this.#listeners.tell(event);
  }
}
