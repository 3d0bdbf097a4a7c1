import { dimensionOf, isUnitName } from '../../fastening/unit';
import type { Built } from '../build/build-procedure';
import type { StepText } from '../document/steps';
import type { Path, Report } from '../issue';

/** A rule must be able to work out the readings of the step that names it. */
export function checkRules({ texts, procedure, steps }: Built, report: Report): void {
  for (const { value, at } of texts)
    if (value.kind === 'measure' || value.kind === 'fill')
      for (const [index, id] of (value['works-out'] ?? []).entries()) {
        const rule = procedure.rules.get(id);
        const place = [...at, 'works-out', index];
        if (rule?.kind === 'readings') checkReadings(value, rule.needs, place, id, report);
      }
  const known = new Set(steps.map(({ step }) => step.id));
  for (const [id, rule] of procedure.rules)
    for (const step of rule.kind === 'readings' ? (rule.steps ?? []) : [])
      if (!known.has(step))
        report.error(
          'unknown-step',
          ['rules', id],
          step,
          `There is no step "${step}".`,
          'Correct the name of the step under "with:".',
        );
}

type Needs = { readonly dimensions: readonly string[]; readonly count: 'any' | 'pairs' | number };

function checkReadings(step: StepText, needs: Needs, place: Path, id: string, report: Report): void {
  if (step.kind !== 'measure') {
    const message = 'This rule works with readings, and nothing is measured here.';
    report.error('wrong-unit', place, id, message, 'Name it in the step that measures.');
    return;
  }
  if (isUnitName(step.unit) && !needs.dimensions.includes(dimensionOf(step.unit)))
    report.error(
      'wrong-unit',
      place,
      id,
      `This rule works with ${needs.dimensions.join(' or ')}, and the readings are in ${step.unit}.`,
      'Name the rule that belongs to these readings.',
    );
  const count = Object.keys(step.readings).length;
  const fits =
    needs.count === 'any' || (needs.count === 'pairs' ? count > 0 && count % 2 === 0 : count === needs.count);
  if (!fits) {
    const wanted = needs.count === 'pairs' ? 'readings in pairs' : `${needs.count} readings`;
    report.error('too-few', place, String(count), `This rule needs ${wanted}.`, 'Name each reading, in their order.');
  }
}
