import { readFile, writeFile } from 'node:fs/promises';
import { createInterface } from 'node:readline/promises';
import { endWhenSeenEnough } from '../seen-enough';
import type { CommandIo } from './check';

/** What the procedure commands need from the outside; tests give their own. */
export type ProcedureIo = CommandIo & {
  /** Writes a file that was not there; false, and nothing written, where there is one already. */
  readonly writeNew: (path: string, text: string) => Promise<boolean>;
  /** Asks the person at the terminal; null where nobody can be asked. An empty text means no answer. */
  readonly ask: ((question: string) => Promise<string>) | null;
};

export function terminalIo(): ProcedureIo {
  endWhenSeenEnough();
  return TERMINAL;
}

const TERMINAL: ProcedureIo = {
  readText: (path) => readFile(path, 'utf8'),
  print: (line) => console.log(line),
  complain: (line) => console.error(line),
  writeNew: (path, text) =>
    writeFile(path, text, { flag: 'wx' }).then(
      () => true,
      (reason: unknown) => {
        if (reason instanceof Error && 'code' in reason && reason.code === 'EEXIST') return false;
        throw reason;
      },
    ),
  ask: process.stdin.isTTY ? askHere : null,
};

async function askHere(question: string): Promise<string> {
  const terminal = createInterface({ input: process.stdin, output: process.stderr });
  const answer = await terminal.question(`${question} `);
  terminal.close();
  return answer;
}
