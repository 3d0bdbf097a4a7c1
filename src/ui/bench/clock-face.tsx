import type { Swing } from '../../core/view/bench-view';
import { useWords } from '../words/words-context';
import { atHour, hoursOf, hourWords, sweep } from './clock-arc';
import './clock-face.css';

const HOURS = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];

/** The bolt head as a clock: where its mark starts, what has been turned (solid), where it must end (the hand). */
export function ClockFace({ swing }: { readonly swing: Swing }) {
  const w = useWords();
  const now = swing.fromHour + hoursOf(swing.turned);
  const start = atHour(swing.fromHour, 78);
  return (
    <svg
      class="clock"
      viewBox="-132 -132 264 264"
      role="img"
      aria-label={w('clock-label', { from: hourWords(swing.fromHour), to: hourWords(swing.toHour) })}
    >
      <circle class="clock-rim" r="100" />
      <path class="clock-to-go" d={sweep(now, swing.left, 78)} />
      <path class="clock-turned" d={sweep(swing.fromHour, swing.turned, 78)} />
      {HOURS.map((hour) => {
        const outer = atHour(hour, 100);
        const inner = atHour(hour, 88);
        return <line key={hour} class="clock-tick" x1={inner.x} y1={inner.y} x2={outer.x} y2={outer.y} />;
      })}
      {[12, 3, 6, 9].map((hour) => {
        const place = atHour(hour, 117);
        return (
          <text key={hour} class="clock-hour" x={place.x} y={place.y + 9}>
            {hour}
          </text>
        );
      })}
      <line class="clock-start" x1="0" y1="0" x2={start.x} y2={start.y} />
      <path
        class="clock-hand"
        d="M-5 0L-5 -60L-17 -60L0 -96L17 -60L5 -60L5 0Z"
        transform={`rotate(${swing.toHour * 30})`}
      />
      <circle class="clock-boss" r="8" />
    </svg>
  );
}
