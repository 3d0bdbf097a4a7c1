import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { BANK, OTHER, TONE_BINS, TONE_WORDS, tonesOf } from './tone-words';

/**
 * Builds the archives the browser test loads: a few kilobytes in the folder layout of a Vosk model, whose words are
 * pairs of pure tones. It can recognise nobody; it makes the real library run its whole course. The archives are
 * checked in, because building needs the OpenFst command line (Debian: libfst-tools):
 *
 *   npx tsx tests/vosk/build-tone-model.ts
 *
 * The acoustic model is a text file: an affine layer undoes the cosine transform of the cepstra and hands out one mel
 * bin a tone, against a constant for silence. Everything is ours; no part of a published model is in it.
 */

const SILENCE = 1;
const TONES = TONE_BINS.length;
/** A tone is one phone where it begins a word and another where it ends one, as word boundaries want it. */
const beginning = (tone: number): number => 2 + tone;
const ending = (tone: number): number => 2 + TONES + tone;
const PHONES = 1 + 2 * TONES;
const WORDS = [...TONE_WORDS, OTHER];

/** A phone has one state with two transitions: into it, and round it again. */
const enter = (phone: number): number => 2 * phone;
const stay = (phone: number): number => 2 * phone - 1;

/** Natural logarithm of mel energy at which a tone begins to beat silence. */
const LOUD = 21;
const WORD_COST = 3;

function acousticModel(): string {
  const phones = Array.from({ length: PHONES }, (_, index) => index + 1);
  const density = (phone: number): number => (phone === SILENCE ? 0 : 1 + ((phone - 2) % TONES));
  const topology = [
    '<TransitionModel>',
    '<Topology>',
    '<TopologyEntry>',
    `<ForPhones> ${phones.join(' ')} </ForPhones>`,
    '<State> 0 <PdfClass> 0 <Transition> 0 0.5 <Transition> 1 0.5 </State>',
    '<State> 1 </State>',
    '</TopologyEntry>',
    '</Topology>',
  ];
  const states = [`<Triples> ${PHONES}`, ...phones.map((phone) => `${phone} 0 ${density(phone)}`), '</Triples>'];
  const half = Math.log(0.5).toFixed(6);
  const probabilities = `<LogProbs> [ 0 ${phones.flatMap(() => [half, half]).join(' ')} ] </LogProbs> </TransitionModel>`;
  const rows = [Array<number>(BANK.bins).fill(0), ...TONE_BINS.map(inverseCosine)];
  const network = [
    // A reader of tokens swallows one blank after each, and this one wants a line end next.
    '<Nnet3> ',
    `input-node name=input dim=${BANK.bins}`,
    'component-node name=bins component=bins input=input',
    'output-node name=output input=bins objective=linear',
    '',
    '<NumComponents> 1',
    '<ComponentName> bins <FixedAffineComponent> <LinearParams>  [',
    `${rows.map((row) => `  ${row.map((x) => x.toFixed(6)).join(' ')}`).join('\n')} ]`,
    `<BiasParams>  [ 0 ${TONE_BINS.map(() => -LOUD).join(' ')} ]`,
    '</FixedAffineComponent> </Nnet3> <LeftContext> 0 <RightContext> 0 <Priors>  [ ]',
  ];
  return `${[...topology, ...states, probabilities, ...network].join('\n')}\n`;
}

/** One bin of the log mel spectrum as a sum over cepstra: a row of the orthonormal cosine transform, transposed. */
function inverseCosine(bin: number): readonly number[] {
  const { bins } = BANK;
  return Array.from(
    { length: bins },
    (_, k) => Math.sqrt((k === 0 ? 1 : 2) / bins) * Math.cos((Math.PI / bins) * (bin + 0.5) * k),
  );
}

/** Sound to words: silence or one word after another, each two tones held for as long as they last. */
function soundGraph(): string {
  const arcs = [`0 1 ${enter(SILENCE)} 0`, `1 1 ${stay(SILENCE)} 0`, '1 0 0 0 0.1'];
  WORDS.forEach((word, index) => {
    const [first, second] = tonesOf(word);
    const [a, b] = [2 + 2 * index, 3 + 2 * index];
    arcs.push(
      `0 ${a} ${enter(beginning(first))} ${index + 1} ${WORD_COST}`,
      `${a} ${a} ${stay(beginning(first))} 0`,
      `${a} ${b} ${enter(ending(second))} 0`,
      `${b} ${b} ${stay(ending(second))} 0`,
      `${b} 0 0 0 0.1`,
    );
  });
  return `${[...arcs, '0 0.0'].join('\n')}\n`;
}

const FEATURES = [
  '--use-energy=false',
  `--sample-frequency=${BANK.sampleHz}`,
  `--num-mel-bins=${BANK.bins}`,
  `--num-ceps=${BANK.bins}`,
  `--low-freq=${BANK.lowHz}`,
  // Counted down from half the sample rate.
  `--high-freq=${BANK.highHz - BANK.sampleHz / 2}`,
  '--cepstral-lifter=0',
];

/** A narrow lattice: with a wide one the many near-equal paths of a pure tone fill the memory. */
const SEARCH = [
  '--min-active=20',
  '--max-active=200',
  '--beam=20.0',
  '--lattice-beam=2.0',
  '--acoustic-scale=1.0',
  '--frame-subsampling-factor=3',
  '--endpoint.silence-phones=1',
  '--endpoint.rule2.min-trailing-silence=0.5',
  '--endpoint.rule3.min-trailing-silence=0.6',
  '--endpoint.rule4.min-trailing-silence=0.8',
];

/** `own-grammar` keeps words and sound in two graphs, so that a grammar can be put in at run time; `static` has one. */
function build(kind: 'own-grammar' | 'static', archive: string): void {
  const scratch = mkdtempSync(join(tmpdir(), 'tone-model-'));
  const inModel = (path: string): string => join(scratch, 'tone-model', path);
  const write = (path: string, text: string): void => {
    mkdirSync(dirname(inModel(path)), { recursive: true });
    writeFileSync(inModel(path), text);
  };
  const run = (tool: string, ...args: readonly string[]): void => {
    execFileSync(tool, args, { cwd: scratch, stdio: 'inherit' });
  };
  try {
    write('am/final.mdl', acousticModel());
    write('conf/mfcc.conf', `${FEATURES.join('\n')}\n`);
    write('conf/model.conf', `${SEARCH.join('\n')}\n`);
    const boundary = (phone: number): string => (phone < 2 + TONES ? 'begin' : 'end');
    const phones = Array.from({ length: PHONES - 1 }, (_, index) => index + 2);
    write('graph/phones/word_boundary.int', `1 nonword\n${phones.map((p) => `${p} ${boundary(p)}\n`).join('')}`);
    write('graph/disambig_tid.int', '');
    writeFileSync(join(scratch, 'sound.txt'), soundGraph());
    run('fstcompile', 'sound.txt', 'sound.fst');
    run('fstarcsort', '--sort_type=ilabel', 'sound.fst', 'sorted.fst');
    if (kind === 'static') {
      run('fstconvert', '--fst_type=const', 'sorted.fst', inModel('graph/HCLG.fst'));
      write(
        'graph/words.txt',
        wordTable((index) => index),
      );
    } else {
      run(
        'fstconvert',
        '--fst_type=olabel_lookahead',
        '--save_relabel_opairs=renamed.txt',
        'sorted.fst',
        inModel('graph/HCLr.fst'),
      );
      const renamed = new Map(
        readFileSync(join(scratch, 'renamed.txt'), 'utf8')
          .trim()
          .split('\n')
          .map((line) => line.split(/\s+/).map(Number) as [number, number]),
      );
      writeFileSync(
        join(scratch, 'words.txt'),
        wordTable((index) => renamed.get(index) ?? index),
      );
      writeFileSync(join(scratch, 'words-graph.txt'), `${WORDS.map((w) => `0 0 ${w} ${w} 1.4`).join('\n')}\n0 0.1\n`);
      // The words sit in the graph itself, as in published models of this kind, which have no words.txt.
      const symbols = ['--isymbols=words.txt', '--osymbols=words.txt', '--keep_isymbols', '--keep_osymbols'];
      run('fstcompile', ...symbols, 'words-graph.txt', 'words.fst');
      run('fstarcsort', '--sort_type=ilabel', 'words.fst', 'words-sorted.fst');
      run('fstconvert', '--fst_type=const', 'words-sorted.fst', inModel('graph/Gr.fst'));
    }
    // Without owners and times the same model is the same bytes.
    const plain = ['--sort=name', '--owner=0', '--group=0', '--numeric-owner', '--mtime=@0', '--format=ustar'];
    execFileSync('tar', [...plain, '-I', 'gzip -n -9', '-cf', archive, 'tone-model'], { cwd: scratch });
  } finally {
    rmSync(scratch, { recursive: true });
  }
}

const wordTable = (id: (index: number) => number): string =>
  `<eps> 0\n${WORDS.map((word, index) => `${word} ${id(index + 1)}\n`).join('')}`;

const here = import.meta.dirname;
build('own-grammar', join(here, 'tone-model.tar.gz'));
build('static', join(here, 'tone-model-static.tar.gz'));
