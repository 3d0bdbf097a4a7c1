import { type FigureIssue, parsePrinted } from '../../fastening/printed-figure';
import { pairDisagreements } from '../../fastening/printed-pair';
import type { Printed, Window } from '../../fastening/quantity';
import { type Dimension, dimensionOf, symbolOf } from '../../fastening/unit';
import { assertNever } from '../../result';
import { part } from '../finding';
import type { Path, Report } from '../issue';

/** A window printed beside its target without a unit of its own: the "(85–95)" of "90° (85–95)". */
const BARE_WINDOW = /\(\s*((?:±|\+\/-)?\s*[\d.,]+(?:\s*[-–]\s*[\d.,]+)?)\s*\)/;

/** Reads a figure as the manual prints it. Problems are reported at its place; a misprinted pair is only a warning. */
export function readQuantity(text: string, wanted: Dimension | undefined, at: Path, report: Report): Printed | null {
  const bare = BARE_WINDOW.exec(text)?.[1];
  const isWindow = bare !== undefined && /[-–±+]/.test(bare);
  const figure = read(isWindow ? text.replace(BARE_WINDOW, '') : text, wanted, at, report);
  if (figure === null) return null;
  for (const { first, second, secondInFirst } of pairDisagreements(figure)) {
    const given = `${first.printed}, ${second.printed}`;
    const converted = `${Number(secondInFirst.toPrecision(4))} ${symbolOf(first.unit)}`;
    report.warning('unit-pair-disagrees', at, given, { first: first.printed, second: second.printed, converted });
  }
  if (!isWindow) return figure;
  const symbol = symbolOf(figure.unit);
  const window = read(
    /^(?:±|\+)/.test(bare) ? `${figure.value} ${bare} ${symbol}` : `${bare} ${symbol}`,
    wanted,
    at,
    report,
  )?.window;
  return window !== undefined && holds(window, figure.value, at, report) ? { ...figure, window } : null;
}

/** Whether a window holds its own target; reported where it does not. */
export function holds({ least, most }: Window, target: number, at: Path, report: Report): boolean {
  if (target >= least && target <= most) return true;
  report.error('window-without-target', at, `${target}; ${least}–${most}`, {});
  return false;
}

function read(text: string, wanted: Dimension | undefined, at: Path, report: Report): Printed | null {
  const figure = parsePrinted(text.trim(), wanted, report.units);
  if (!figure.ok) {
    for (const issue of figure.error) reportFigure(issue, at, report);
    return null;
  }
  const { value, window } = figure.value;
  const finite = [value, window?.least ?? 0, window?.most ?? 0].every(Number.isFinite);
  if (!finite) {
    report.error('not-finite.figure', at, text, {});
    return null;
  }
  return figure.value;
}

function reportFigure(issue: FigureIssue, at: Path, report: Report): void {
  const { given } = issue;
  switch (issue.code) {
    case 'wrong-dimension':
      report.error('wrong-unit.dimension', at, issue.text, {
        given: part(dimensionOf(issue.given)),
        wanted: part(issue.wanted),
      });
      break;
    case 'range-reversed':
      report.error('bounds-reversed.range', at, given, {});
      break;
    case 'not-a-number':
    case 'not-a-figure':
      report.error('bad-quantity', at, given, { given });
      break;
    case 'ambiguous-comma':
      report.error('bad-quantity.comma', at, given, { given });
      break;
    case 'unit-missing':
      report.error('bad-quantity.no-unit', at, given, { given });
      break;
    case 'unknown-unit':
      report.error('bad-quantity.unknown-unit', at, given, { given });
      break;
    case 'ambiguous-unit':
      report.error('bad-quantity.ambiguous-unit', at, given, { given, could: issue.could });
      break;
    case 'two-units-in-a-range':
      report.error('bad-quantity.two-units', at, given, { given });
      break;
    default:
      assertNever(issue);
  }
}
