import { readFileSync } from 'node:fs';
import { checkDocument } from '../../../src/cli/check-document';
import { planOf, stepIn } from '../../../src/core/job/plan';

/** A document of tests/cases/procedures, checked, and its steps by id. */
export function checkedText(name: string) {
  const file = `tests/cases/procedures/${name}.yaml`;
  const checked = checkDocument(readFileSync(file, 'utf8'), file);
  if (!checked.ok) throw new Error(JSON.stringify(checked.error, null, 1));
  const plan = planOf(checked.value);
  return { procedure: checked.value, of: (id: string) => stepIn(plan, id).step };
}
