import { baseOf, type Window } from '../../fastening/quantity';
import type { UnitName } from '../../fastening/unit';
import type { PassText } from '../document/passes';
import type { Path, Report } from '../issue';
import type { Pass, PassCommon } from '../procedure';
import { holds, readQuantity } from './quantity';

export const PASS_KINDS = ['torque', 'repeat', 'angle', 'slacken', 'wait'] as const;
export type PassKind = (typeof PASS_KINDS)[number];

/** The pass with the figures of its kind, or null where one could not be read. */
export function withFigures(kind: PassKind, text: PassText, common: PassCommon, at: Path, report: Report): Pass | null {
  switch (kind) {
    case 'torque':
    case 'repeat':
      return torquePass(kind, text, common, at, report);
    case 'angle':
      return anglePass(text, common, at, report);
    case 'slacken': {
      const here = [...at, kind];
      const target = readQuantity(text.slacken ?? '', 'angle', here, report);
      if (target === null || !isPositive(target.value, here, report)) return null;
      return { ...common, kind, degrees: inDegrees(target.value, target.unit) };
    }
    case 'wait':
      return { ...common, kind, timer: text.wait ?? '' };
  }
}

/** The window stays in the unit of its target: a wrench is set in one unit, and the bounds are read off it. */
function torquePass(
  kind: 'torque' | 'repeat',
  text: PassText,
  common: PassCommon,
  at: Path,
  report: Report,
): Pass | null {
  const here = [...at, kind];
  const target = readQuantity(text[kind] ?? '', 'torque', here, report);
  if (target === null || !isPositive(target.value, here, report)) return null;
  if (text.window === undefined) return { ...common, kind, target, ...(target.window && { window: target.window }) };
  const place = [...at, 'window'];
  const range = readQuantity(text.window, 'torque', place, report);
  if (range === null) return null;
  if (range.window === undefined || range.unit !== target.unit) {
    report.error('wrong-unit.window', place, text.window, { unit: target.unit });
    return null;
  }
  return holds(range.window, target.value, place, report) ? { ...common, kind, target, window: range.window } : null;
}

/** Target and window in degrees, however the document writes them. */
function anglePass(text: PassText, common: PassCommon, at: Path, report: Report): Pass | null {
  const here = [...at, 'angle'];
  const target = readQuantity(text.angle ?? '', 'angle', here, report);
  const range = text.window === undefined ? target : readQuantity(text.window, 'angle', [...at, 'window'], report);
  if (target === null || range === null || !isPositive(target.value, here, report)) return null;
  if (range.window === undefined) {
    report.error('window-missing', here, text.angle ?? '', {});
    return null;
  }
  const degrees = inDegrees(target.value, target.unit);
  const { least, most } = range.window;
  const window: Window = { least: inDegrees(least, range.unit), most: inDegrees(most, range.unit) };
  if (!holds(window, degrees, here, report)) return null;
  const floor = text.floor === undefined ? undefined : readQuantity(text.floor, 'torque', [...at, 'floor'], report);
  if (floor === null) return null;
  return { ...common, kind: 'angle', degrees, window, swings: text.swings ?? 1, ...(floor && { floor }) };
}

function inDegrees(value: number, unit: UnitName): number {
  const degrees = baseOf({ value, unit }, 'angle');
  if (!degrees.ok) throw new Error(`${unit} was read as a unit of angle`);
  return degrees.value;
}

function isPositive(value: number, at: Path, report: Report): boolean {
  if (value > 0) return true;
  report.error('out-of-range.positive', at, String(value), {});
  return false;
}
