import { dimensionOf, isUnitName, UNIT_NAMES } from '../../fastening/unit';
import type { StepText } from '../document/steps';
import { part } from '../finding';
import type { Path, Report } from '../issue';
import type { ReadingSpec, Step, StepCommon } from '../procedure';
import type { OrderedPattern } from './order';
import { buildPasses } from './pass';
import { readQuantity } from './quantity';
import { buildQuestion } from './question';

/** One step, or null where a part that its kind cannot do without was wrong and has been reported. */
export function buildStep(
  text: StepText,
  at: Path,
  /** Null: there is such a pattern, but it could not be built, which has been reported already. */
  patterns: ReadonlyMap<string, OrderedPattern | null>,
  report: Report,
): Step | null {
  const common = commonOf(text, at, report);
  switch (text.kind) {
    case undefined:
    case 'do':
      return { ...common, kind: 'do' };
    case 'remove':
    case 'refit':
      return { ...common, kind: text.kind };
    case 'hold':
      if (text['read-back'] === undefined) report.error('hold-without-read-back', at, text.id, {});
      return { ...common, kind: 'hold' };
    case 'tighten':
    case 'slacken': {
      const ordered = patterns.get(text.pattern);
      if (ordered === undefined) {
        report.error('unknown-pattern', [...at, 'pattern'], text.pattern, {
          id: text.pattern,
          mend: part('add-entry', { group: 'patterns' }),
        });
        return null;
      }
      if (ordered === null) return null;
      const { tool, lubrication, recovery } = text;
      const passes = buildPasses(text.passes, ordered, { tool, lubrication, recovery }, [...at, 'passes'], report);
      return { ...common, kind: text.kind, pattern: text.pattern, passes };
    }
    case 'measure': {
      const readings = readingsOf(text, at, report);
      return {
        ...common,
        kind: 'measure',
        readings,
        ...(text.limit !== undefined && { limit: text.limit }),
        ...worksOutOf(text),
      };
    }
    case 'wait':
      return { ...common, kind: 'wait', timer: text.timer };
    case 'fill': {
      const amount = readQuantity(text.amount, undefined, [...at, 'amount'], report);
      if (amount === null) return null;
      const dimension = dimensionOf(amount.unit);
      if (dimension !== 'volume' && dimension !== 'mass')
        report.error('wrong-unit.fill', [...at, 'amount'], text.amount, { dimension: part(dimension) });
      return { ...common, kind: 'fill', what: text.what, amount, ...worksOutOf(text) };
    }
  }
}

const worksOutOf = (text: { readonly 'works-out'?: readonly string[] | undefined }) =>
  text['works-out'] ? { worksOut: text['works-out'] } : {};

function commonOf(text: StepText, at: Path, report: Report): StepCommon {
  const question = buildQuestion(text, at, report);
  return {
    id: text.id,
    say: text.say,
    warnings: text.warnings ?? [],
    cautions: text.cautions ?? [],
    notes: text.notes ?? [],
    tools: text.tools ?? [],
    parts: text.parts ?? [],
    opens: text.opens ?? [],
    closes: text.closes ?? [],
    ...(text.milestone && { milestone: text.milestone }),
    ...(question && { question }),
    startsTimers: text['starts-timers'] ?? [],
    needsTimers: text['needs-timers'] ?? [],
    ...(text['only-if'] && { only: text['only-if'] }),
    stow: text.stow ?? [],
    ...(text.record && { record: Object.entries(text.record).map(([id, say]) => ({ id, say })) }),
  };
}

function readingsOf(text: Extract<StepText, { kind: 'measure' }>, at: Path, report: Report): readonly ReadingSpec[] {
  const { unit, decimals } = text;
  const [least, most] = text.between;
  if (least >= most) report.error('bounds-reversed', [...at, 'between'], `${least}, ${most}`, {});
  if (!isUnitName(unit)) {
    report.error('bad-quantity.unit', [...at, 'unit'], unit, { unit, units: UNIT_NAMES });
    return [];
  }
  const readings = Object.entries(text.readings).map(([id, say]) => ({ id, say, unit, least, most, decimals }));
  if (readings.length === 0) report.error('too-few.measured', [...at, 'readings'], '0', {});
  return readings;
}
