import { assertNever } from '../result';
import type { Offer, SlotDomain, SlotValue, UnitScale } from './grammar';
import type { Piece } from './tags';

/** The values of a command's slots from what was said in each. */
export function slotValues(
  { slots: domains }: Offer,
  said: Readonly<Record<string, readonly Piece[]>>,
): Readonly<Record<string, SlotValue>> {
  const values: Record<string, SlotValue> = {};
  for (const [slot, pieces] of Object.entries(said)) {
    const domain = domains[slot];
    const value = domain && slotValue(valueKind(domain), pieces);
    if (value) values[slot] = value;
  }
  return values;
}

function valueKind(domain: SlotDomain): SlotValue['kind'] {
  switch (domain.kind) {
    case 'integers':
      return 'integer';
    case 'reading':
      return 'reading';
    case 'named':
    case 'options':
      return 'option';
    default:
      return assertNever(domain);
  }
}

/** Whether a value lies in a domain; a reading also needs its decimals and its unit to fit. */
export function holds(domain: SlotDomain | undefined, value: SlotValue): boolean {
  switch (domain?.kind) {
    case undefined:
      return false;
    case 'integers':
      return value.kind === 'integer' && domain.values.includes(value.value);
    case 'reading':
      return value.kind === 'reading' && isReadingIn(domain, value.value, value.unit);
    case 'named':
      return value.kind === 'option' && domain.ids.includes(value.id);
    case 'options':
      return value.kind === 'option' && domain.options.some(({ id }) => id === value.id);
    default:
      return assertNever(domain);
  }
}

// Room for binary rounding: 0.1 + 0.2 said in words is still 0.3.
const SLACK = 1e-9;

function isReadingIn(domain: Extract<SlotDomain, { kind: 'reading' }>, value: number, unit: string | null): boolean {
  if (unit === null) return !domain.unitNeeded && isOnScale(domain, value);
  return [domain, ...(domain.also ?? [])].some((scale) => scale.units.includes(unit) && isOnScale(scale, value));
}

/** Whether a number lies in the range of a scale, on its grid. */
export function isOnScale({ least, most, decimals }: Omit<UnitScale, 'units'>, value: number): boolean {
  const steps = value * 10 ** decimals;
  return value >= least - SLACK && value <= most + SLACK && Math.abs(steps - Math.round(steps)) < 1e-6;
}

/** The value of a slot from what was said in it, or undefined where it has none. */
function slotValue(kind: SlotValue['kind'], said: readonly Piece[]): SlotValue | undefined {
  const number = said.find((piece) => piece.kind === 'number')?.value;
  const name = said.find((piece) => piece.kind === 'name')?.id;
  switch (kind) {
    case 'integer':
      return number === undefined ? undefined : { kind, value: number };
    case 'reading':
      return number === undefined ? undefined : { kind, value: number, unit: name ?? null };
    case 'option':
      return name === undefined ? undefined : { kind, id: name };
    default:
      return assertNever(kind);
  }
}
