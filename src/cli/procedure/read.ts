import type { Procedure } from '../../core/procedure/procedure';
import type { Tongue } from '../../core/tongue';
import { checkDocument } from '../check-document';
import { issueLines } from '../issue-lines';
import { languages, readTongue } from '../tongue-files';
import { EXIT } from './check';
import type { ProcedureIo } from './io';

/** A checked procedure, or the exit code after everything that is wrong with it has been told. */
async function readProcedure(file: string, io: ProcedureIo): Promise<Procedure | number> {
  const text = await io.readText(file).catch((reason: unknown) => new Error(String(reason)));
  if (text instanceof Error) {
    io.complain(`${file}: cannot be read. ${text.message}`);
    return EXIT.misused;
  }
  const checked = checkDocument(text, file);
  if (checked.ok) return checked.value;
  for (const line of issueLines(text, checked.error)) io.complain(line);
  return EXIT.broken;
}

/** Runs a command over one checked procedure, called with exactly so many words. */
export async function withProcedure(
  argv: readonly string[],
  words: number,
  usage: string,
  io: ProcedureIo,
  run: (procedure: Procedure, rest: readonly string[]) => number,
): Promise<number> {
  const [file, ...rest] = argv;
  if (file === undefined || argv.length !== words || argv.some((word) => word.startsWith('-'))) {
    io.complain(`Usage: ${usage}`);
    return EXIT.misused;
  }
  const procedure = await readProcedure(file, io);
  return typeof procedure === 'number' ? procedure : run(procedure, rest);
}

/** The same for a command that hears or says something: it is given the language of the document. */
export const withTongue = (
  argv: readonly string[],
  words: number,
  usage: string,
  io: ProcedureIo,
  run: (procedure: Procedure, tongue: Tongue, rest: readonly string[]) => number,
): Promise<number> =>
  withProcedure(argv, words, usage, io, (procedure, rest) => {
    const { language } = procedure;
    if (!languages().includes(language)) return noSuch('language', language, languages(), io);
    return run(procedure, readTongue(language), rest);
  });

/** Tells that something the procedure does not have was asked for, with what there is. */
export function noSuch(what: string, given: string, known: Iterable<string>, io: ProcedureIo): number {
  io.complain(`There is no ${what} "${given}". There are: ${[...known].join(', ')}.`);
  return EXIT.misused;
}
