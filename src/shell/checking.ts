import { checkProcedure, type ProcedureCheck } from '../core/procedure/check-procedure';
import { type FindingWords, readFindingWords, type ToldIssue, tellIssue } from '../core/procedure/finding-words';
import type { ProcedureIssue } from '../core/procedure/issue';
import { readWording, type Wordings } from '../core/procedure/wording';

// This file is fetched when the first document is read, and the texts of findings when there is one to be shown.
const WORDINGS = import.meta.glob<unknown>('../../grammars/*/wording.yaml', { eager: true, import: 'default' });
const FINDINGS = import.meta.glob<unknown>('../../grammars/*/findings.yaml', { import: 'default' });

// The tests hold every language to both files, so a broken one is a bug.
const BROKEN = 'language-files-broken';

const wordings: Wordings = new Map(
  Object.entries(WORDINGS).map(([path, raw]) => {
    const wording = readWording(raw);
    if (!wording.ok) throw new Error(`${BROKEN} ${path} ${JSON.stringify(wording.error)}`);
    return [path.split('/').at(-2) ?? '', wording.value];
  }),
);

export const check = (text: string, file: string): ProcedureCheck => checkProcedure(text, file, wordings);

/** Issues in the words of a language. */
export async function tell(issues: readonly ProcedureIssue[], language: string): Promise<readonly ToldIssue[]> {
  if (issues.length === 0) return [];
  const words = await wordsOf(language);
  return issues.map((issue) => tellIssue(words, issue));
}

async function wordsOf(language: string): Promise<FindingWords> {
  const path = `../../grammars/${language}/findings.yaml`;
  const words = readFindingWords(await FINDINGS[path]?.());
  if (!words.ok) throw new Error(`${BROKEN} ${path} ${JSON.stringify(words.error)}`);
  return words.value;
}
