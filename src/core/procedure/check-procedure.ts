import { fail, ok, type Result } from '../result';
import { buildProcedure } from './build/build-procedure';
import { checkWhole } from './checks/check-whole';
import { document } from './document/document';
import { codeOf, type Finding, finding } from './finding';
import type { ProcedureIssue, Report, Severity, Tell } from './issue';
import type { Procedure } from './procedure';
import { shapeFaults } from './shape';
import type { Position } from './source/locate';
import { readSource } from './source/read-source';
import { NO_WORDING, type Wordings } from './wording';

/** A procedure, or everything that is wrong with its document; warnings come with either. */
export type ProcedureCheck = Result<Procedure, readonly ProcedureIssue[]> & {
  readonly warnings: readonly ProcedureIssue[];
};

/** Nobody mends more than this in one go, and a broken file could hold hundreds of thousands. */
const MOST_ISSUES = 300;

/**
 * Reads a procedure document and checks all of it; `file` only names it in the issues, and `wordings` are those of every
 * language there is. Never throws, whatever the text.
 * Three layers, each told in full before the next is looked at, since a later one cannot be trusted over a broken
 * earlier one: is it YAML, has it the shape of a procedure, does it make sense as a job.
 */
export function checkProcedure(text: string, file: string, wordings: Wordings): ProcedureCheck {
  const errors: ProcedureIssue[] = [];
  const warnings: ProcedureIssue[] = [];
  const add = (severity: Severity, found: Finding, given: string, position: () => Position): void => {
    const issues = severity === 'error' ? errors : warnings;
    if (issues.length < MOST_ISSUES)
      issues.push({ code: codeOf(found), severity, file, ...position(), given, finding: found });
  };
  const broken = (): ProcedureCheck => ({ ...fail(inOrder(errors)), warnings: inOrder(warnings) });

  const source = readSource(text);
  for (const fault of source.faults) add('error', fault.finding, fault.given, () => fault.position);
  if (errors.length > 0) return broken();

  const shape = document.safeParse(source.value);
  const faults = shape.success ? [] : shapeFaults(shape.error.issues, source.value);
  for (const fault of faults) add('error', fault.finding, fault.given, () => source.locate(fault.at, fault.onKey));
  if (!shape.success) return broken();

  const reportAs =
    (severity: Severity): Tell =>
    (key, at, given, slots) =>
      add(severity, finding(key, slots), given, () => source.locate(at));
  const wording = wordings.get(shape.data.language) ?? NO_WORDING;
  const report: Report = { error: reportAs('error'), warning: reportAs('warning'), units: wording.units };
  const built = buildProcedure(shape.data, wording, report);
  checkWhole(built, wording, report);
  return errors.length > 0 ? broken() : { ...ok(built.procedure), warnings: inOrder(warnings) };
}

/** From the top of the file; what each turn of a `for:` says about the same place is told once. */
function inOrder(issues: readonly ProcedureIssue[]): readonly ProcedureIssue[] {
  const seen = new Map(issues.toReversed().map((issue) => [`${issue.code} ${issue.line} ${issue.column}`, issue]));
  return [...seen.values()].toSorted((a, b) => a.line - b.line || a.column - b.column || (a.code < b.code ? -1 : 1));
}
