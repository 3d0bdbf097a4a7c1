/** Where things lie on a clock face: twelve uppermost, hours clockwise; x to the right, y down, as SVG draws. */

export type OnFace = { readonly x: number; readonly y: number };

export function atHour(hour: number, radius: number): OnFace {
  const angle = (hour / 12) * 2 * Math.PI;
  return { x: round(radius * Math.sin(angle)), y: round(-radius * Math.cos(angle)) };
}

/** Hours clockwise for degrees clockwise: 30 degrees an hour. */
export const hoursOf = (degrees: number): number => degrees / 30;

/**
 * The slice of the face from an hour over so many degrees clockwise, as an SVG path; empty for no degrees. From a
 * whole turn on it is the whole face: the words beside it count the turns.
 */
export function sweep(fromHour: number, degrees: number, radius: number): string {
  if (degrees <= 0) return '';
  const turned = Math.min(degrees, 359.9);
  const from = atHour(fromHour, radius);
  const to = atHour(fromHour + hoursOf(turned), radius);
  return `M0 0L${from.x} ${from.y}A${radius} ${radius} 0 ${turned > 180 ? 1 : 0} 1 ${to.x} ${to.y}Z`;
}

/** "12", "1:30": an hour of the face as a clock would show it, to the minute. */
export function hourWords(hour: number): string {
  const minutes = Math.round(hour * 60);
  const whole = Math.floor(minutes / 60) % 12;
  const rest = minutes % 60;
  return `${whole === 0 ? 12 : whole}${rest === 0 ? '' : `:${String(rest).padStart(2, '0')}`}`;
}

const round = (n: number): number => Math.round(n * 100) / 100;
