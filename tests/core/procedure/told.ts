import { expect } from 'vitest';
import { languages, readFindingsFile } from '../../../src/cli/tongue-files';
import { FINDINGS } from '../../../src/core/procedure/finding-keys';
import { tellIssue } from '../../../src/core/procedure/finding-words';
import type { ProcedureIssue } from '../../../src/core/procedure/issue';

const words = languages().map((language) => readFindingsFile(language));

/** An issue says where it is, and in every language what is wrong and how to mend it, with every slot filled. */
export function expectTold(issue: ProcedureIssue, file: string): void {
  const { finding, line, column } = issue;
  expect([issue.file, line >= 1, column >= 1]).toEqual([file, true, true]);
  expect(Object.keys(finding.slots).toSorted()).toEqual([...FINDINGS[finding.key]].toSorted());
  for (const language of words) {
    const { message, mend } = tellIssue(language, issue);
    expect([message, mend].map((text) => text.length > 3)).toEqual([true, true]);
  }
}
