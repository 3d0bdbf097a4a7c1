import { readFileSync } from 'node:fs';
import { readTongue } from '../../src/cli/tongue-files';
import { type Command, command } from '../../src/core/job/command';
import { decide } from '../../src/core/job/decide/decide';
import type { EntryBody } from '../../src/core/job/entry';
import { evolve } from '../../src/core/job/evolve';
import { newJob } from '../../src/core/job/job';
import { placeOf } from '../../src/core/job/place';
import { passIn, planOf } from '../../src/core/job/plan';
import { EMPTY, headOf, sealAfter } from '../../src/core/log/chain';
import { printJobFile } from '../../src/core/log/job-file';
import { shipped } from '../core/job/workbench';
import { nodeHash } from '../core/log/sample-log';
import { wayForward } from '../machine/way-forward';

/** The longest job there is to work: both heads of the demonstration engine. */
const NAME = 'tarnbeck-head-gasket';
/** From one command to the next: what a swing of the wrench takes, and waiting where the document says so. */
const TURN_MS = 9_000;
const WAIT_MS = 3_600_000;
const BEGAN = Date.UTC(2026, 2, 2, 7, 30);
/** After so much work the rest of the day and the night are left out. */
const DAY_MS = 9 * 3_600_000;
const NIGHT_MS = 15 * 3_600_000;
/** More turns than the job has, from its first step to where it may be closed. */
const MOST_TURNS = 5_000;

/** What somebody alone with a job asks and does between two bolts; `null` is a sentence that was not understood. */
const ASIDES: readonly (readonly (Command['rule'] | null)[])[] = [
  ['tell-torque'],
  ['tell-place', 'tell-remaining'],
  [null],
  ['hold-on', 'im-back'],
  ['tell-caution'],
  ['tell-next', null],
  ['tell-tool', 'tell-loose-ends'],
];

/** `last` is what the last line of its record reads. */
export type LongRecord = { readonly text: string; readonly entries: number; readonly last: string };

/** A job worked the right way, with asides and bolts taken back, as a hand-over file of exactly so many sealed entries. */
export function longRecord(entries: number): LongRecord {
  const turns = new Shift(entries).work(() => false);
  const shift = new Shift(entries - 1);
  // Bolts taken back make it longer than the first time, so that it may be full before it is over.
  shift.work((turn) => shift.many < (entries - 1) * Math.min(1, turn / turns));
  while (shift.many < entries - 1) shift.aside();
  shift.most = entries;
  const last = 'that is the last of it';
  shift.hear({ kind: 'rejected', words: last, score: 0.2, why: 'unlikely' });
  return { text: shift.print(), entries, last };
}

class Shift {
  private readonly procedure = shipped(NAME);
  private readonly tongue = readTongue(this.procedure.language);
  private readonly words = new Map<string, string>();
  private readonly texts: string[] = [];
  private head = EMPTY;
  private job = newJob(planOf(this.procedure));
  private mono = 0;
  private asides = 0;

  constructor(public most: number) {
    const text = readFileSync(`procedures/${NAME}.yaml`, 'utf8');
    const { id, machine } = this.procedure;
    this.write(
      { kind: 'job-started', job: 'job-1', procedure: id, text, textHash: nodeHash(text), machine, people: [] },
      { kind: 'session-opened' },
    );
  }

  get many(): number {
    return this.texts.length;
  }

  /** To where the job may be closed, filling in asides while `isShort`; how many turns it took. */
  work(isShort: (turn: number) => boolean): number {
    for (let turn = 0; turn < MOST_TURNS; turn += 1) {
      if (placeOf(this.job).kind === 'closing' || this.many === this.most) return turn;
      const isDone = this.give(wayForward(this.job));
      if (!isDone) this.mono += WAIT_MS;
      if (isDone && isShort(turn)) this.takeBack();
      // A question that waits is answered first: a break would drop it.
      while (!this.job.pending && isShort(turn)) this.aside();
    }
    throw new Error(`${NAME} was not over after ${MOST_TURNS} turns`);
  }

  aside(): void {
    for (const rule of ASIDES[this.asides % ASIDES.length] ?? []) {
      if (rule) this.give(command(rule));
      else this.hear({ kind: 'rejected', words: 'pass me the other one', score: 0.31, why: 'unlikely' });
    }
    this.asides += 1;
  }

  /** A bolt that was told too early, and again. A turned one is left alone: taken back, it would be in doubt. */
  private takeBack(): void {
    const place = placeOf(this.job);
    if (place.kind !== 'pass' || place.part !== 'work' || this.job.entries.at(-1)?.kind !== 'bolt-done') return;
    if (passIn(this.job.plan, place.step, place.pass).kind === 'angle') return;
    this.give(command('take-back'));
    this.give(wayForward(this.job));
  }

  print(): string {
    const { id, title } = this.procedure;
    const job = { id: 'job-1', title, procedure: id, created: BEGAN, who: 'Ansel', closed: false };
    return printJobFile({ card: job, head: this.head, texts: this.texts, blobs: [] });
  }

  /** One sentence, what it is written down as, and the answer. */
  private give(c: Command): boolean {
    this.hear({ kind: 'heard', words: this.wordsFor(c), score: 0.93, by: 'voice', command: c.rule });
    const { verdict, entries, replies } = decide(this.job, c, this.now());
    this.write(...entries);
    const { shown } = this.tongue.phrase(replies);
    if (replies.length > 0) this.write({ kind: 'said', code: replies.map(({ code }) => code).join(' '), text: shown });
    return verdict !== 'refused';
  }

  /** Looking up what can be said here is slow, so each command is said in the same words all through. */
  private wordsFor(c: Command): string {
    const key = JSON.stringify(c);
    const known = this.words.get(key) ?? this.tongue.teaching(this.job).get(c.rule) ?? c.rule.replaceAll('-', ' ');
    this.words.set(key, known);
    return known;
  }

  hear(body: EntryBody): void {
    this.mono += TURN_MS;
    this.write(body);
  }

  private now() {
    const nights = Math.floor(this.mono / DAY_MS) * NIGHT_MS;
    return { at: BEGAN + this.mono + nights, mono: this.mono, session: 's1', who: 'Ansel' };
  }

  /** What comes after the last entry wanted is not written. */
  private write(...bodies: readonly EntryBody[]): void {
    const wanted = bodies.slice(0, this.most - this.many);
    for (const { entry, sealed } of sealAfter(this.head, wanted, this.now(), nodeHash)) {
      this.texts.push(sealed.text);
      this.head = headOf(sealed);
      this.job = evolve(this.job, entry);
    }
  }
}
