import { existsSync, readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { parse } from 'yaml';
import { wordsOfLine } from '../core/voice-profile/reading-aloud';
import { earLanguage } from '../speech/ear/ear-language';
import { Resampler } from '../speech/ear/resampler';
import type { Speaker } from '../voice/flite/speakers';
import { tighteningGrammar } from './bench/bench-grammars';
import { type BenchSet, recordedSets, say, spokenSet } from './bench/bench-sets';
import { Corpus, RECORDED_LANGUAGE } from './bench/corpus';
import { inLines, type LineSound, readTo } from './bench/read-to';
import { type Answer, runSet } from './bench/run-set';
import { earForNode } from './ear-host';
import { fliteForNode } from './flite-host';
import { endWhenSeenEnough } from './seen-enough';
import { readTongue } from './tongue-files';

const USAGE = `Usage: npm run bench:adapt -- [--data DIR] [--every N] [--snr DB]
How each speaker is heard before and after reading aloud. Real digits: half of a speaker's are read, the other half heard,
and then other people's words and orders, to which every answer is wrong. Then synthetic speakers, who read the lines of
Setup and give commands at --snr. --every 3 takes every third command and every third of other people's. DIR defaults to
WRENCHSIDE_SPEECH.`;

const LINES_EACH = 6;
/** How many times smaller than they were: the model fits nobody of some sizes. */
const SPEAKERS: readonly (readonly [Speaker, number])[] = [
  ['slt', 1.1],
  ['rms', 1.3],
  ['slt', 1],
  ['awb', 1],
  ['rms', 1],
  ['kal16', 1],
];

/** Exit code 0 even where there is no data, since that is said in so many words; 2 for misuse. */
async function main(argv: readonly string[]): Promise<number> {
  endWhenSeenEnough();
  const { values } = parseArgs({
    args: [...argv],
    options: {
      data: { type: 'string' },
      every: { type: 'string', default: '1' },
      snr: { type: 'string', default: '12' },
      help: { type: 'boolean', default: false },
    },
  });
  const [every, snrDb] = [Number(values.every), Number(values.snr)];
  if (values.help || !Number.isInteger(every) || every < 1 || !Number.isFinite(snrDb)) {
    console.error(USAGE);
    return values.help ? 0 : 2;
  }
  const folder = values.data ?? process.env.WRENCHSIDE_SPEECH;
  if (!folder || !existsSync(folder)) {
    console.log('ADAPTATION NOT RUN: give --data DIR or set WRENCHSIDE_SPEECH to a folder with manifest.jsonl');
    return 0;
  }
  const tongue = readTongue(RECORDED_LANGUAGE);
  const language = earLanguage(tongue);
  const corpus = new Corpus(folder);
  const noise = corpus.sound('noise/kitchen.wav');
  const bench = await tighteningGrammar(tongue);
  const plain = await earForNode(language);
  const recorded = recordedSets(corpus, bench);
  const strangers = recorded.filter(({ name }) => name === 'others-to-bench' || name === 'orders-to-bench');

  const thinned = (of: BenchSet): BenchSet => ({ ...of, clips: of.clips.filter((_, n) => n % every === 0) });

  /** One set before and after; the strangers only where something was learned. */
  const compare = async (
    who: string,
    lines: readonly LineSound[],
    set: BenchSet,
    at: number | null,
    others: readonly BenchSet[],
  ) => {
    const lesson = await readTo(plain, lines);
    const fitted = lesson?.means ? await earForNode(language, undefined, undefined, lesson) : null;
    console.log(`${who}: ${lesson ? (lesson.means ? lesson.sureness : 'fits already') : 'too few good lines'}`);
    for (const [ear, name] of [[plain, 'plain'] as const, ...(fitted ? [[fitted, 'fitted'] as const] : [])]) {
      for (const of of [set, ...(name === 'fitted' ? others : [])]) {
        const { answers } = await runSet(ear, of, of.name === set.name ? at : null, noise);
        const count = (wanted: Answer): number => answers.filter(({ answer }) => answer === wanted).length;
        const wrong = answers.flatMap(({ answer, heard }) => (answer === 'wrong' ? heard : [])).join(', ');
        console.log(
          `  ${name.padEnd(7)} ${of.name.padEnd(16)} ${String(answers.length).padStart(4)} clips: ` +
            `${count('right')} right, ${count('wrong')} wrong, ${count('rejected')} refused${wrong ? ` (${wrong})` : ''}`,
        );
      }
    }
  };

  const digits = recorded.find(({ name }) => name === 'digits');
  const spoken = corpus.recordings.filter(({ set }) => set === 'digits');
  for (const speaker of new Set(spoken.flatMap((one) => one.speaker ?? []))) {
    const own = spoken.filter((one) => one.speaker === speaker);
    const read = own.filter((_, n) => n % 2 === 0);
    const lines = read.map(({ file, text }) => ({ words: [text ?? ''], sound: corpus.sound(file) }));
    const rest = new Set(own.filter((_, n) => n % 2 === 1).map(({ file }) => file));
    if (digits)
      await compare(
        `digits ${speaker}`,
        inLines(lines, LINES_EACH),
        { ...digits, clips: digits.clips.filter(({ id }) => rest.has(id)) },
        null,
        strangers.map(thinned),
      );
  }
  const texts: Readonly<Record<string, string>> = parse(
    readFileSync(`grammars/${RECORDED_LANGUAGE}/screen.yaml`, 'utf8'),
  );
  const flite = await fliteForNode();
  for (const [speaker, smaller] of SPEAKERS) {
    const sized = (sound: Float32Array): Float32Array => new Resampler(16_000 * smaller, 16_000).push(sound);
    const set = thinned(spokenSet(flite, bench, speaker));
    const commands = { ...set, clips: set.clips.map((clip) => ({ ...clip, sound: () => sized(clip.sound()) })) };
    const lines = [1, 2, 3, 4].map((n) => {
      const words = wordsOfLine(texts[`read-line-${n}`] ?? '');
      return { words, sound: sized(say(flite, words.join(' '), speaker)) };
    });
    await compare(`voice ${speaker}, ${smaller} times smaller`, lines, commands, snrDb, []);
  }
  return 0;
}

process.exitCode = await main(process.argv.slice(2));
