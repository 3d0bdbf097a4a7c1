import { type FindingWords, tellIssue } from '../core/procedure/finding-words';
import type { ProcedureIssue } from '../core/procedure/issue';
import { languages, readFindingsFile, readGivenText } from './tongue-files';

/** The language a document names, whatever else is wrong with it; where that is none of ours, the first there is. */
function languageOf(text: string): string {
  const named = /^language:\s*['"]?([a-z]{2,3})\b/m.exec(text)?.[1];
  const [first = ''] = languages();
  return languages().find((code) => code === named) ?? first;
}

/**
 * Issues of one document, each as `file:line:column severity code message` in one line, in the language of the document:
 * whoever writes in it reads it.
 */
export function issueLines(text: string, issues: readonly ProcedureIssue[]): readonly string[] {
  if (issues.length === 0) return [];
  const language = languageOf(text);
  const words = readFindingsFile(language);
  return issues.map((issue) => issueLine(words, readGivenText(language), issue));
}

function issueLine(words: FindingWords, givenText: string, issue: ProcedureIssue): string {
  const { file, line, column, severity, code, given, message, mend } = tellIssue(words, issue);
  const what = given === '' ? [] : [`${givenText.replace('{given}', () => given)}.`];
  return [`${file}:${line}:${column}`, severity, code, message, ...what, mend].join(' ');
}
