import { readFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import type { Clock } from '../core/ports';
import type { Desk } from '../machine/desk';
import { typedRecogniser } from '../speech/typed';
import { endWhenSeenEnough } from './seen-enough';
import { turnSince } from './transcript';
import { nodeClock, openWorkshop, tongueFor } from './workshop';

const USAGE = `Usage: npm run rehearse -- PROCEDURE.yaml [SCRIPT.txt]
Type what you would say, a line each, or give a file of lines; "#" begins a comment, and "+ 20 min" or "+ 48 h" is a
pause of that length, for what must cure or cool. Nothing is kept.`;

const PAUSE = /^\+\s*(\d+)\s*(min|h)$/;
const MS = { min: 60_000, h: 3_600_000 } as const;

/** A clock that pauses can be put on. */
class Ahead implements Clock {
  #ms = 0;
  wall = (): number => nodeClock.wall() + this.#ms;
  mono = (): number => nodeClock.mono() + this.#ms;

  /** Whether the line was a pause. */
  takes(line: string): boolean {
    const [, many, unit] = PAUSE.exec(line) ?? [];
    if (many === undefined) return false;
    this.#ms += Number(many) * MS[unit === 'h' ? 'h' : 'min'];
    console.log(line);
    return true;
  }
}

/** Plays a procedure from typed words and prints every reply. Exit code 1 where the procedure is broken, 2 for misuse. */
async function main(argv: readonly string[]): Promise<number> {
  endWhenSeenEnough();
  const [file, script] = argv;
  if (!file || file.startsWith('-')) {
    console.error(USAGE);
    return file === '--help' ? 0 : 2;
  }
  const clock = new Ahead();
  const tongue = tongueFor(file);
  const opened = tongue.ok ? await openWorkshop(file, tongue.value, typedRecogniser(), clock) : tongue;
  if (!opened.ok) {
    for (const line of opened.error) console.error(line);
    return 1;
  }
  const desk = opened.value;
  console.log(`  ${desk.snapshot.said?.shown ?? ''}`);
  const lines = script ? readFileSync(script, 'utf8').split('\n') : createInterface({ input: process.stdin });
  for await (const raw of lines) {
    const line = raw.replace(/#.*/, '').trim();
    if (!clock.takes(line)) await say(desk, line);
  }
  return 0;
}

async function say(desk: Desk, words: string): Promise<void> {
  if (words === '') return;
  const before = desk.snapshot.entries.length;
  desk.type(words);
  await desk.idle();
  const turn = turnSince(desk, before);
  console.log(`> ${words}`);
  console.log(turn.outcome === 'rejected' ? `  (not a command: ${turn.what}) ${turn.shown}` : `  ${turn.shown}`);
  console.log(`  [${turn.place}]`);
}

if (process.argv[1]?.endsWith('rehearse.ts')) process.exitCode = await main(process.argv.slice(2));
