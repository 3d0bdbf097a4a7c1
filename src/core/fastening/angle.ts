import { fail, ok, type Result } from '../result';
import { type NotPositive, notPositive } from './positive';
import { type Degrees, degrees, type Window } from './quantity';
import { sideOf, steady } from './steady';

/** Swings of one fastener add up: 45 and 45 are 90. Counted on the fastener's mark, never on the tool. Degrees. */
export const angleSum = (swings: readonly Degrees[]): Degrees => degrees(swings.reduce((sum, s) => sum + s, 0));

/** A stage of a tightening as far as angles go; `window` in degrees. */
export type Turn =
  | { readonly kind: 'angle'; readonly degrees: Degrees; readonly window: Window }
  | { readonly kind: 'slacken' }
  | { readonly kind: 'torque' };

/** The angle that counts: turns since the last slackening. What was turned before it is gone. */
export function angleThatCounts(turns: readonly Turn[]): { readonly degrees: Degrees; readonly window: Window } {
  const since = turns.slice(turns.findLastIndex((turn) => turn.kind === 'slacken') + 1);
  const angles = since.filter((turn) => turn.kind === 'angle');
  return {
    degrees: angleSum(angles.map((turn) => turn.degrees)),
    window: {
      least: angles.reduce((sum, turn) => sum + turn.window.least, 0),
      most: angles.reduce((sum, turn) => sum + turn.window.most, 0),
    },
  };
}

export type AngleVerdict =
  /** Still to turn: at least this much, at most that much. */
  | { readonly kind: 'under'; readonly least: Degrees; readonly most: Degrees }
  | { readonly kind: 'within' }
  /** Turned too far. Never turned back by the difference: the document's recovery decides. */
  | { readonly kind: 'over'; readonly by: Degrees };

/** Compares the angle turned with its window, both bounds included, in degrees. */
export function angleVerdict(turned: Degrees, window: Window): AngleVerdict {
  const side = sideOf(turned, window);
  if (side === 'within') return { kind: 'within' };
  if (side === 'over') return { kind: 'over', by: steady(degrees(turned - window.most)) };
  return {
    kind: 'under',
    least: steady(degrees(window.least - turned)),
    most: steady(degrees(window.most - turned)),
  };
}

export type Swing = {
  /** How far to turn now. */
  readonly degrees: Degrees;
  /** How many swings are left, with this one. */
  readonly left: number;
  /** Where the mark points after it, clockwise from where it pointed before the pass. */
  readonly markAt: Degrees;
  /** The sum turned in this pass after it. */
  readonly turned: Degrees;
};

/**
 * The next swing towards `target`: what is left, in equal swings none of which is longer than the room allows.
 * All in degrees; null when nothing is left. Errors: `not-positive` for `target` or `room`.
 */
export function nextSwing(target: Degrees, turned: Degrees, room: Degrees): Result<Swing | null, NotPositive> {
  const bad = notPositive({ target, room });
  if (bad) return fail(bad);
  const toGo = target - turned;
  if (toGo <= 0) return ok(null);
  const left = Math.ceil(steady(toGo / room));
  const after = degrees(turned + toGo / left);
  return ok({ degrees: degrees(toGo / left), left, markAt: degrees(after % 360), turned: after });
}
