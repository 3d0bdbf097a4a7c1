import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { decodeWav } from '../voice/flite/wav';
import { earRecogniser } from './ear-recogniser';
import { endWhenSeenEnough } from './seen-enough';
import { turnSince } from './transcript';
import { openWorkshop, tongueFor } from './workshop';

const USAGE = `Usage: npm run hear -- --procedure PROCEDURE.yaml FILE.wav...
Plays each recording (mono WAV) to the recogniser, grammar and machine of the app and prints what came of it.`;

/** Exit code 1 where the procedure is broken or a recording cannot be read, 2 for misuse. */
async function main(argv: readonly string[]): Promise<number> {
  endWhenSeenEnough();
  const { values, positionals } = parseArgs({
    args: [...argv],
    options: { procedure: { type: 'string' }, json: { type: 'boolean', default: false } },
    allowPositionals: true,
  });
  if (!values.procedure || positionals.length === 0) {
    console.error(USAGE);
    return 2;
  }
  const tongue = tongueFor(values.procedure);
  if (!tongue.ok) return broken(tongue.error);
  const ear = await earRecogniser(tongue.value);
  const opened = await openWorkshop(values.procedure, tongue.value, ear);
  if (!opened.ok) return broken(opened.error);
  const desk = opened.value;
  if (!values.json) console.log(`  ${desk.snapshot.said?.shown ?? ''}`);
  let code = 0;
  for (const file of positionals) {
    const sound = decodeWav(readFileSync(file));
    if (!sound.ok) {
      console.error(`${file}: not a recording that can be read (${sound.error.code}). Give mono 16-bit PCM WAV.`);
      code = 1;
      continue;
    }
    const before = desk.snapshot.entries.length;
    await ear.play(sound.value);
    await desk.idle();
    const turn = turnSince(desk, before);
    const score = desk.snapshot.heard?.score ?? 0;
    if (values.json) console.log(JSON.stringify({ file, score, ...turn }));
    else
      console.log(
        `${file}\n  heard "${turn.words}" (${score.toFixed(2)}) -> ${turn.outcome} ${turn.what}\n  ${turn.shown}\n  [${turn.place}]`,
      );
  }
  return code;
}

function broken(lines: readonly string[]): number {
  for (const line of lines) console.error(line);
  return 1;
}

process.exitCode = await main(process.argv.slice(2));
