import type { TargetedMouseEvent } from 'preact';
import { useWords } from '../words/words-context';
import { type Strip, type StripDay, seqAt } from './strip-of-days';
import './day-strip.css';

type DayStripProps = {
  readonly strip: Strip;
  /** The day whose lines are in sight. */
  readonly here: string;
  readonly onJump: (seq: number) => void;
};

/** In units of a quarter of an hour and of this height; stretched to the room there is. */
const HIGH = 20;
/** What is drawn of a quarter in which one thing was done among many. */
const LEAST = 4;
/** Of one in which something was only said. */
const TALK = 1;

/** The days side by side. Bars stand for what was done, marks hanging from above for trouble; a tap goes to that time. */
export function DayStrip({ strip, here, onJump }: DayStripProps) {
  const w = useWords();
  const { fromHour, toHour } = strip;
  return (
    <nav class="strip" aria-label={w('strip-label')}>
      <ol class="strip-days">
        {strip.days.map((day) => (
          <li key={day.day}>
            <button
              type="button"
              class="strip-day"
              aria-current={day.day === here ? 'true' : undefined}
              aria-label={w('strip-day', {
                day: day.day,
                from: day.from,
                to: day.to,
                done: day.done,
                trouble: day.trouble,
              })}
              onClick={(event) => {
                const seq = seqAt(strip, day, shareOf(event));
                if (seq !== undefined) onJump(seq);
              }}
            >
              <span class="strip-name">{day.name}</span>
              <Bars strip={strip} day={day} />
            </button>
          </li>
        ))}
      </ol>
      <p class="strip-means">{w('strip-means', { from: fromHour, to: toHour })}</p>
    </nav>
  );
}

function Bars({ strip: { fromHour, toHour, most }, day }: { readonly strip: Strip; readonly day: StripDay }) {
  const first = fromHour * 4;
  return (
    <svg
      class="strip-bars"
      viewBox={`0 0 ${(toHour - fromHour) * 4} ${HIGH}`}
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      {day.quarters.map(({ index, done, isTrouble }) => {
        const high = done === 0 ? TALK : Math.max(LEAST, (done / most) * (HIGH - 6));
        return (
          <g key={index}>
            <rect class="strip-done" x={index - first} y={HIGH - high} width="1" height={high} />
            {isTrouble && <rect class="strip-trouble" x={index - first + 0.25} y="0" width="0.5" height="5" />}
          </g>
        );
      })}
    </svg>
  );
}

/** How far along the day it was tapped; a key gives the start. */
function shareOf(event: TargetedMouseEvent<HTMLButtonElement>): number {
  if (event.detail === 0) return 0;
  const { left, width } = event.currentTarget.getBoundingClientRect();
  return Math.min(1, Math.max(0, (event.clientX - left) / Math.max(1, width)));
}
