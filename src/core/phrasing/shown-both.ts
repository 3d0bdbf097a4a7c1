import type { Printed, UnitName } from '../fastening/quantity';
import { shownIn } from '../fastening/shown-figure';

/** A figure as printed with the other unit in brackets: "40 N·m (29.5 lbf·ft)". The printed one alone where they are the same. */
export function shownBoth(figure: Printed, other: UnitName): string {
  const also = shownIn(figure, other);
  return also.ok && other !== figure.unit ? `${figure.printed} (${also.value.printed})` : figure.printed;
}
