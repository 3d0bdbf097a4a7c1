import { type Dimension, dimensionOf, isUnitName } from '../../fastening/unit';
import type { Built } from '../build/build-procedure';
import type { StepText } from '../document/steps';
import { part } from '../finding';
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
      if (!known.has(step)) report.error('unknown-step.rule', ['rules', id], step, { step });
}

type Needs = { readonly dimensions: readonly Dimension[]; readonly count: 'any' | 'pairs' | number };

function checkReadings(step: StepText, needs: Needs, place: Path, id: string, report: Report): void {
  if (step.kind !== 'measure') {
    report.error('wrong-unit.no-readings', place, id, {});
    return;
  }
  if (isUnitName(step.unit) && !needs.dimensions.includes(dimensionOf(step.unit)))
    report.error('wrong-unit.rule', place, id, {
      dimensions: needs.dimensions.map((dimension) => part(dimension)),
      unit: step.unit,
    });
  const count = Object.keys(step.readings).length;
  const fits =
    needs.count === 'any' || (needs.count === 'pairs' ? count > 0 && count % 2 === 0 : count === needs.count);
  if (fits) return;
  if (needs.count === 'pairs') report.error('too-few.pairs', place, String(count), {});
  else report.error('too-few.readings', place, String(count), { count: needs.count });
}
