import { readFile } from 'node:fs/promises';
import type { ProcedureIo } from '../../src/cli/procedure/io';

/** A terminal for the procedure commands that remembers what was printed, complained of and written. */
export function recordedIo(files: Readonly<Record<string, string>> = {}, answers: readonly string[] | null = null) {
  const printed: string[] = [];
  const complaints: string[] = [];
  const questions: string[] = [];
  const written = new Map<string, string>();
  const left = [...(answers ?? [])];
  const io: ProcedureIo = {
    readText: (path) => {
      const text = files[path] ?? written.get(path);
      return text === undefined ? readFile(path, 'utf8') : Promise.resolve(text);
    },
    print: (line) => printed.push(line),
    complain: (line) => complaints.push(line),
    writeNew: async (path, text) => {
      if (files[path] !== undefined || written.has(path)) return false;
      written.set(path, text);
      return true;
    },
    ask:
      answers === null
        ? null
        : async (question) => {
            questions.push(question);
            return left.shift() ?? '';
          },
  };
  return { io, printed, complaints, questions, written };
}
