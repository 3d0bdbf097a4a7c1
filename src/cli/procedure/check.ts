import { readFile } from 'node:fs/promises';
import { pathToFileURL } from 'node:url';
import { checkDocument } from '../check-document';
import { issueLines } from '../issue-lines';

/** What a command needs from the outside. `readText` rejects where there is no such file. */
export type CommandIo = {
  readonly readText: (path: string) => Promise<string>;
  readonly print: (line: string) => void;
  readonly complain: (line: string) => void;
};

export const EXIT = {
  /** Every document is a procedure; there may be warnings. */
  fine: 0,
  /** At least one document has an error. */
  broken: 1,
  /** The command was called wrongly, or a file could not be read. */
  misused: 2,
} as const;

const USAGE =
  'Usage: check FILE...   checks procedure documents; exits 1 on any error, 2 on a file that cannot be read.';

/**
 * Checks documents and complains of each finding as `file:line:column severity code message`; the count of each file is
 * printed. Answers with the exit code.
 */
export async function main(argv: readonly string[], io: CommandIo): Promise<number> {
  if (argv.length === 0 || argv.some((word) => word.startsWith('-'))) {
    io.complain(USAGE);
    return argv.includes('--help') ? EXIT.fine : EXIT.misused;
  }
  let worst: number = EXIT.fine;
  for (const file of argv) worst = Math.max(worst, await checkFile(file, io));
  return worst;
}

async function checkFile(file: string, io: CommandIo): Promise<number> {
  const text = await io.readText(file).catch((reason: unknown) => new Error(String(reason)));
  if (text instanceof Error) {
    io.complain(`${file}: cannot be read. ${text.message}`);
    return EXIT.misused;
  }
  const checked = checkDocument(text, file);
  const errors = checked.ok ? [] : checked.error;
  for (const line of issueLines(text, [...errors, ...checked.warnings])) io.complain(line);
  const steps = checked.ok ? `, ${checked.value.phases.flatMap((phase) => phase.steps).length} steps` : '';
  io.print(`${file}: ${count(errors.length, 'error')}, ${count(checked.warnings.length, 'warning')}${steps}`);
  return checked.ok ? EXIT.fine : EXIT.broken;
}

const count = (n: number, word: string): string => `${n} ${word}${n === 1 ? '' : 's'}`;

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href)
  process.exitCode = await main(process.argv.slice(2), {
    readText: (path) => readFile(path, 'utf8'),
    print: (line) => console.log(line),
    complain: (line) => console.error(line),
  });
