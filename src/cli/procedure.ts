import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { PHRASES_USAGE, phrases } from './phrases';
import { CARD_USAGE, card } from './procedure/card';
import { CHART_USAGE, chart } from './procedure/chart';
import { main as check, EXIT } from './procedure/check';
import { DRAW_USAGE, draw } from './procedure/draw';
import { EXPLAIN_USAGE, explain } from './procedure/explain';
import { type ProcedureIo, terminalIo } from './procedure/io';
import { newDocument } from './procedure/new';
import { NEW_USAGE } from './procedure/new-flags';
import { isRunDirectly } from './procedure/run-directly';

type ProcedureCommand = {
  readonly usage: string;
  readonly run: (argv: readonly string[], io: ProcedureIo) => Promise<number>;
};

const COMMANDS: ReadonlyMap<string, ProcedureCommand> = new Map<string, ProcedureCommand>([
  [
    'check',
    { usage: 'check FILE...   checks documents; tells each finding as file:line:column severity code', run: check },
  ],
  ['new', { usage: NEW_USAGE, run: newDocument }],
  ['card', { usage: CARD_USAGE, run: card }],
  ['rehearse', { usage: 'rehearse FILE [SCRIPT]   plays the job from typed words; nothing is kept', run: rehearse }],
  ['phrases', { usage: PHRASES_USAGE, run: phrases }],
  ['draw', { usage: DRAW_USAGE, run: draw }],
  ['chart', { usage: CHART_USAGE, run: chart }],
  ['explain', { usage: EXPLAIN_USAGE, run: explain }],
]);

const HELP = `Usage: npm run procedure -- COMMAND ...

${[...COMMANDS.values()].map(({ usage }) => `  ${usage.replaceAll('\n', '\n  ')}`).join('\n')}

Exit code: ${EXIT.fine} all is well, ${EXIT.broken} a document has errors, ${EXIT.misused} a command was called wrongly or a file cannot be read or written.
What was asked for goes to standard output; what is wrong goes to standard error, as file:line:column severity code.`;

/** Everything for those who write procedure documents, under one command. Answers with the exit code. */
export async function main(argv: readonly string[], io: ProcedureIo): Promise<number> {
  const [name, ...rest] = argv;
  const command = COMMANDS.get(name ?? '');
  if (command && rest.includes('--help')) io.print(`Usage: ${command.usage}`);
  else if (command) return command.run(rest, io);
  else if (name === '--help' || name === 'help') io.print(HELP);
  else {
    io.complain(name === undefined ? HELP : `There is no command "${name}".\n${HELP}`);
    return EXIT.misused;
  }
  return EXIT.fine;
}

/** The rehearsal is a program of its own: it holds the terminal until the last word. */
async function rehearse(argv: readonly string[]): Promise<number> {
  const program = fileURLToPath(new URL('rehearse.ts', import.meta.url));
  const child = spawn(process.execPath, [...process.execArgv, program, ...argv], { stdio: 'inherit' });
  return new Promise((resolve) => {
    child.on('error', () => resolve(EXIT.misused));
    child.on('close', (code) => resolve(code ?? EXIT.misused));
  });
}

if (isRunDirectly(import.meta.url)) process.exitCode = await main(process.argv.slice(2), terminalIo());
