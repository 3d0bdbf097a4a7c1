import { readFileSync } from 'node:fs';
import { planOf, stepIn } from '../../../src/core/job/plan';
import { checkProcedure } from '../../../src/core/procedure/check-procedure';

/** A document of tests/cases/procedures, checked, and its steps by id. */
export function checkedText(name: string) {
  const file = `tests/cases/procedures/${name}.yaml`;
  const checked = checkProcedure(readFileSync(file, 'utf8'), file);
  if (!checked.ok) throw new Error(JSON.stringify(checked.error, null, 1));
  const plan = planOf(checked.value);
  return { procedure: checked.value, of: (id: string) => stepIn(plan, id).step };
}
