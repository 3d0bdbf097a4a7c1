import { type FigureIssue, parsePrinted } from '../../fastening/printed-figure';
import { pairDisagreements } from '../../fastening/printed-pair';
import type { Printed, Window } from '../../fastening/quantity';
import { type Dimension, dimensionOf, symbolOf } from '../../fastening/unit';
import { assertNever } from '../../result';
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
    const given = `${first.printed} and ${second.printed}`;
    const converted = `${Number(secondInFirst.toPrecision(4))} ${symbolOf(first.unit)}`;
    report.warning(
      'unit-pair-disagrees',
      at,
      given,
      `${second.printed} is ${converted}, not ${first.printed}.`,
      'Look at the manual again: one of the two is a misprint.',
    );
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
  const given = `${target} outside ${least}–${most}`;
  const mend = 'Correct the target or the window.';
  report.error('window-without-target', at, given, 'The window does not hold its own target.', mend);
  return false;
}

function read(text: string, wanted: Dimension | undefined, at: Path, report: Report): Printed | null {
  const figure = parsePrinted(text.trim(), wanted);
  if (!figure.ok) {
    for (const issue of figure.error) reportFigure(issue, at, report);
    return null;
  }
  const { value, window } = figure.value;
  const finite = [value, window?.least ?? 0, window?.most ?? 0].every(Number.isFinite);
  if (!finite) {
    report.error('not-finite', at, text, 'This is not a finite number.', 'Write the number out.');
    return null;
  }
  return figure.value;
}

function reportFigure(issue: FigureIssue, at: Path, report: Report): void {
  if (issue.code === 'wrong-dimension') {
    const message = `A ${dimensionOf(issue.given)} stands where a ${issue.wanted} belongs.`;
    report.error('wrong-unit', at, issue.text, message, 'Correct the unit.');
  } else if (issue.code === 'range-reversed') {
    report.error('bounds-reversed', at, issue.given, 'The range runs from high to low.', 'Put the lower end first.');
  } else {
    const [problem, mend] = unreadable(issue);
    report.error('bad-quantity', at, issue.given, `"${issue.given}" ${problem}.`, mend);
  }
}

/** What is wrong with a figure that cannot be read, and how to mend it. */
function unreadable(
  issue: Exclude<FigureIssue, { readonly code: 'wrong-dimension' | 'range-reversed' }>,
): readonly [string, string] {
  switch (issue.code) {
    case 'not-a-number':
    case 'not-a-figure':
      return ['is not a number with a unit', 'Write it like 40 N·m, 90° or 0.05 mm.'];
    case 'ambiguous-comma':
      return ['can be read two ways', 'Write a decimal point, or leave out the comma between thousands.'];
    case 'unit-missing':
      return ['has no unit', 'Write the unit that the manual prints.'];
    case 'unknown-unit':
      return ['is not a unit known here', 'Write the unit as in N·m, lbf·ft, mm, in, °, bar, L.'];
    case 'ambiguous-unit':
      return [`could be ${issue.could.join(' or ')}`, 'Write which of them is meant.'];
    case 'two-units-in-a-range':
      return ['has two units in one range', 'Give both ends in the same unit.'];
    default:
      return assertNever(issue);
  }
}
