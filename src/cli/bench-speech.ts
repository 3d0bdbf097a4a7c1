import { existsSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { earLanguage } from '../speech/ear/ear-language';
import { tighteningGrammar } from './bench/bench-grammars';
import { recordedSets, spokenSets } from './bench/bench-sets';
import { Corpus, RECORDED_LANGUAGE } from './bench/corpus';
import { jobCommands } from './bench/job-commands';
import { type Answer, type Row, runSet } from './bench/run-set';
import { wilson } from './bench/wilson';
import { earForNode } from './ear-host';
import { fliteForNode } from './flite-host';
import { endWhenSeenEnough } from './seen-enough';
import { readTongue } from './tongue-files';

const USAGE = `Usage: npm run bench:speech -- [--data DIR] [--json FILE] [--set NAME]... [--every N]
Plays recordings and synthetic speakers to the ear and prints how it did. DIR defaults to WRENCHSIDE_SPEECH; it holds
manifest.jsonl and the sound it names. --every 3 takes every third recording, --set only the sets so called.`;

/** Exit code 0 even where there is no data, since that is said in so many words; 2 for misuse. */
async function main(argv: readonly string[]): Promise<number> {
  endWhenSeenEnough();
  const { values } = parseArgs({
    args: [...argv],
    options: {
      data: { type: 'string' },
      json: { type: 'string' },
      set: { type: 'string', multiple: true },
      every: { type: 'string', default: '1' },
      help: { type: 'boolean', default: false },
    },
  });
  const every = Number(values.every);
  if (values.help || !Number.isInteger(every) || every < 1) {
    console.error(USAGE);
    return values.help ? 0 : 2;
  }
  const folder = values.data ?? process.env.WRENCHSIDE_SPEECH;
  if (!folder || !existsSync(folder)) {
    console.log('REAL SPEECH NOT RUN: give --data DIR or set WRENCHSIDE_SPEECH to a folder with manifest.jsonl');
    return 0;
  }
  const tongue = readTongue(RECORDED_LANGUAGE);
  const corpus = new Corpus(folder);
  const bench = await tighteningGrammar(tongue);
  const noise = corpus.sound('noise/kitchen.wav');
  const ear = await earForNode(earLanguage(tongue));
  const sets = [...recordedSets(corpus, bench), ...spokenSets(await fliteForNode(), bench, jobCommands(tongue))];

  console.log('set               SNR  clips    right           wrong          rejected        RTF');
  const rows: Row[] = [];
  for (const set of sets.filter(({ name }) => values.set?.includes(name) ?? true)) {
    const some = { ...set, clips: set.clips.filter((_, n) => n % every === 0) };
    for (const snrDb of set.snrs) {
      const row = await runSet(ear, some, snrDb, noise);
      rows.push(row);
      console.log(lineFor(row));
    }
  }
  if (values.json) writeFileSync(values.json, `${JSON.stringify(rows, null, 1)}\n`);
  return 0;
}

function lineFor({ set, snrDb, answers, realTimeFactor }: Row): string {
  const share = (wanted: Answer): string => {
    const hits = answers.filter(({ answer }) => answer === wanted).length;
    const [low, high] = wilson(hits, answers.length);
    return `${((100 * hits) / answers.length).toFixed(1).padStart(5)} (${low.toFixed(0)}-${high.toFixed(0)})`.padEnd(
      15,
    );
  };
  const snr = snrDb === null ? 'clean' : `${snrDb} dB`;
  const shares = [share('right'), share('wrong'), share('rejected')].join(' ');
  return `${set.padEnd(16)} ${snr.padStart(5)} ${String(answers.length).padStart(5)}  ${shares} ${realTimeFactor.toFixed(2)}`;
}

process.exitCode = await main(process.argv.slice(2));
