import { dirname, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { fail, ok, type Result } from '../../core/result';
import type { Draft, DraftIssue, LayoutDraft } from '../authoring/draft';
import { readCircle, readGrid, readPlaces } from '../authoring/read-layout';
import { readOrder, readSubsets } from '../authoring/read-order';
import { readPasses } from '../authoring/read-passes';
import { idFrom } from '../authoring/scalar';
import { writeDocument } from '../authoring/write-document';
import { checkDocument } from '../check-document';
import { issueLines } from '../issue-lines';
import { EXIT } from './check';
import type { ProcedureIo } from './io';
import { NEW_USAGE, type NewFlags, newFlags } from './new-flags';
import { draftIssueLine, readOrAsk } from './new-questions';

/** Writes a document from what a manual's page says. Nothing is written that the checker would refuse. */
export async function newDocument(argv: readonly string[], io: ProcedureIo): Promise<number> {
  const parsed = newFlags(argv);
  const misused = (line: string): number => {
    io.complain(line);
    return EXIT.misused;
  };
  if (typeof parsed === 'string') return misused(`${parsed}\nUsage: ${NEW_USAGE}`);
  const [file, ...more] = parsed.positionals;
  if (file === undefined || more.length > 0) return misused(`Usage: ${NEW_USAGE}`);
  const draft = await draftFrom(parsed.values, io);
  if (draft === null) return misused(`${file}: nothing was written.`);

  const text = writeDocument(draft, schemaFrom(file));
  const checked = checkDocument(text, file);
  const issues = [...(checked.ok ? [] : checked.error), ...checked.warnings];
  for (const line of issueLines(text, issues)) io.complain(line);
  if (!checked.ok) return misused(`${file}: nothing was written.`);
  const written = await io.writeNew(file, text).catch((reason: unknown) => String(reason));
  if (typeof written === 'string') return misused(`${file}: cannot be written. ${written}`);
  if (!written) return misused(`${file} is there already. Give another name, or move it away first.`);
  io.print(`${file}: written, 0 errors, ${checked.warnings.length} warnings`);
  return EXIT.fine;
}

const SCHEMA = fileURLToPath(new URL('../../../procedures/procedure.schema.json', import.meta.url));

function schemaFrom(file: string): string {
  const path = relative(dirname(file), SCHEMA).replaceAll('\\', '/');
  return path.startsWith('.') ? path : `./${path}`;
}

async function draftFrom(flags: NewFlags, io: ProcedureIo): Promise<Draft | null> {
  const joint = oneOf('joint', flags.joint ?? 'plain', ['head', 'flange', 'plain'], io);
  const bolts = oneOf('bolts', flags.bolts ?? 'new', ['new', 'reuse'], io);
  const over =
    flags.over === undefined ? null : oneOf('over', flags.over, ['restart-bolt', 'restart-all', 'accept'], io);
  if (joint === undefined || bolts === undefined || over === undefined) return null;
  const machine = await readOrAsk('machine', flags.machine, 'Which machine is it?', notBlank, io);
  const title = machine && (await readOrAsk('title', flags.title, 'What is the job called?', notBlank, io));
  const layout = title && (await layoutFrom(flags, io));
  if (!machine || !title || !layout) return null;
  const subsets = readSubsets(flags.subset ?? [], layout);
  if (!subsets.ok) {
    for (const issue of subsets.error) io.complain(draftIssueLine('subset', issue));
    return null;
  }
  const order = await readOrAsk(
    'order',
    flags.order,
    'In which order are they tightened? List the numbers, or write centre-out or cross.',
    (text) => readOrder(text, layout, joint, flags.generated === true),
    io,
  );
  const passes =
    order &&
    (await readOrAsk(
      'passes',
      flags.passes,
      'Which passes are there? As printed, parted by commas: 30 N·m (22 lbf·ft), 90° (85–95).',
      (text) => readPasses(text, subsets.value),
      io,
    ));
  if (!order || !passes) return null;
  return {
    id: flags.id ?? idFrom(title),
    title,
    machine,
    edition: flags.edition ?? 'first draft',
    source: flags.source ?? 'Typed in from the manual. Every figure is to be read against its page.',
    demonstration: flags.demonstration === true,
    name: flags.name ?? 'joint',
    joint,
    viewedFrom: flags['viewed-from'] ?? 'as the picture in the manual is drawn',
    layout,
    order,
    subsets: subsets.value,
    passes,
    lubrication: flags.lubrication ?? '',
    bolts,
    wrench: flags.wrench ?? null,
    over,
  };
}

async function layoutFrom(flags: NewFlags, io: ProcedureIo): Promise<LayoutDraft | null> {
  const grid = (text: string) =>
    readGrid(text, flags.numbers ?? null, { columns: flags.columns ?? null, rows: flags.rows ?? null });
  const given = (['circle', 'grid', 'at'] as const).filter((flag) => flags[flag] !== undefined);
  const [flag, ...others] = given;
  if (others.length > 0) {
    io.complain(
      `One of --circle, --grid and --at is enough: ${given.map((name) => `--${name}`).join(' and ')} were given.`,
    );
    return null;
  }
  const read = { circle: readCircle, grid, at: readPlaces };
  if (flag !== undefined) return readOrAsk(flag, flags[flag], '', read[flag], io);
  const question = 'Where are they? circle 8,160 or grid 4x2,120x90 or at 0,0 60,0 30,50 (millimetres)';
  return readOrAsk('circle, --grid or --at', undefined, question, (text) => layoutNamed(text, read), io);
}

function layoutNamed(
  text: string,
  read: Readonly<Record<'circle' | 'grid' | 'at', (text: string) => Result<LayoutDraft, readonly DraftIssue[]>>>,
): Result<LayoutDraft, readonly DraftIssue[]> {
  const match = /^(circle|grid|at)\s+(.+)$/.exec(text);
  const [, kind, rest] = match ?? [];
  if (rest !== undefined && (kind === 'circle' || kind === 'grid' || kind === 'at')) return read[kind](rest);
  const message = 'This names no layout.';
  return fail([{ code: 'bad-layout', column: 1, given: text, message, mend: 'Begin with circle, grid or at.' }]);
}

function notBlank(text: string): Result<string, readonly DraftIssue[]> {
  if (/\S/.test(text)) return ok(text.trim());
  return fail([{ code: 'blank-text', column: 1, given: text, message: 'There are no words.', mend: 'Write some.' }]);
}

/** One of the words allowed, or undefined after telling so. */
function oneOf<W extends string>(flag: string, given: string, words: readonly W[], io: ProcedureIo): W | undefined {
  const word = words.find((candidate) => candidate === given);
  if (word === undefined)
    io.complain(`--${flag}:1:1 error not-one-of It must be one of ${words.join(', ')}. Given: ${given}.`);
  return word;
}
