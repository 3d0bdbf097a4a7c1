import { millimetres, type UnitIn } from './quantity';
import { dimensionOf, isUnitName } from './unit';
import type { Wrench } from './wrench';

const LONGEST_NAME = 60;

/** A wrench that came in a file, as one that was entered by hand would be; null for anything else. */
export function readWrench(raw: unknown): Wrench | null {
  if (typeof raw !== 'object' || raw === null) return null;
  const given: ReadonlyMap<string, unknown> = new Map(Object.entries(raw));
  const [id, say, unit] = [given.get('id'), given.get('say'), given.get('unit')];
  const [least, most, graduation] = [given.get('least'), given.get('most'), given.get('graduation')];
  const [lever, due, dropped] = [given.get('lever'), given.get('calibrationDue'), given.get('dropped')];
  if (!isText(id) || !isText(say) || !isTorque(unit) || typeof dropped !== 'boolean') return null;
  if (!isNumber(least) || !isNumber(most) || !isNumber(graduation)) return null;
  if (least < 0 || most < least || most <= 0 || graduation <= 0) return null;
  if (lever !== undefined && !(isNumber(lever) && lever > 0)) return null;
  if (due !== undefined && !isDay(due)) return null;
  return {
    id,
    say,
    unit,
    least,
    most,
    graduation,
    ...(lever === undefined ? {} : { lever: millimetres(lever) }),
    ...(due === undefined ? {} : { calibrationDue: due }),
    dropped,
  };
}

const isText = (raw: unknown): raw is string => typeof raw === 'string' && raw !== '' && raw.length <= LONGEST_NAME;
const isNumber = (raw: unknown): raw is number => typeof raw === 'number' && Number.isFinite(raw);
const isTorque = (raw: unknown): raw is UnitIn<'torque'> =>
  typeof raw === 'string' && isUnitName(raw) && dimensionOf(raw) === 'torque';
const isDay = (raw: unknown): raw is string =>
  typeof raw === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(raw) && Number.isFinite(Date.parse(raw));
