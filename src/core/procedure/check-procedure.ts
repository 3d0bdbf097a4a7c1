import { fail, ok, type Result } from '../result';
import { buildProcedure } from './build/build-procedure';
import { checkWhole } from './checks/check-whole';
import { document } from './document/document';
import type { Finding, ProcedureIssue, Report, Severity } from './issue';
import type { Procedure } from './procedure';
import { shapeFaults } from './shape';
import type { Position } from './source/locate';
import { readSource } from './source/read-source';

/** A procedure, or everything that is wrong with its document; warnings come with either. */
export type ProcedureCheck = Result<Procedure, readonly ProcedureIssue[]> & {
  readonly warnings: readonly ProcedureIssue[];
};

/**
 * Reads a procedure document and checks all of it; `file` only names it in the issues. Never throws, whatever the text.
 * Three layers, each told in full before the next is looked at, since a later one cannot be trusted over a broken
 * earlier one: is it YAML, has it the shape of a procedure, does it make sense as a job.
 */
export function checkProcedure(text: string, file: string): ProcedureCheck {
  const source = readSource(text);
  if (source.faults.length > 0)
    return broken(source.faults.map(({ position, ...fault }) => issueOf(fault, 'error', file, position)));

  const shape = document.safeParse(source.value);
  if (!shape.success) {
    const faults = shapeFaults(shape.error.issues, source.value);
    return broken(faults.map(({ onKey, at, ...fault }) => issueOf(fault, 'error', file, source.locate(at, onKey))));
  }

  const errors: ProcedureIssue[] = [];
  const warnings: ProcedureIssue[] = [];
  const into =
    (issues: ProcedureIssue[], severity: Severity): Report['error'] =>
    (code, at, given, message, mend) =>
      void issues.push(issueOf({ code, given, message, mend }, severity, file, source.locate(at)));
  const report: Report = { error: into(errors, 'error'), warning: into(warnings, 'warning') };
  const built = buildProcedure(shape.data, report);
  checkWhole(built, report);
  const told = inOrder(warnings);
  return errors.length > 0 ? { ...fail(inOrder(errors)), warnings: told } : { ...ok(built.procedure), warnings: told };
}

const broken = (errors: readonly ProcedureIssue[]): ProcedureCheck => ({ ...fail(inOrder(errors)), warnings: [] });

const issueOf = (fault: Omit<Finding, 'at'>, severity: Severity, file: string, position: Position): ProcedureIssue => ({
  code: fault.code,
  severity,
  file,
  ...position,
  given: fault.given,
  message: fault.message,
  mend: fault.mend,
});

/** From the top of the file; what each turn of a `for:` says about the same place is told once. */
function inOrder(issues: readonly ProcedureIssue[]): readonly ProcedureIssue[] {
  const seen = new Map(issues.toReversed().map((issue) => [`${issue.code} ${issue.line} ${issue.column}`, issue]));
  return [...seen.values()].toSorted((a, b) => a.line - b.line || a.column - b.column || (a.code < b.code ? -1 : 1));
}
