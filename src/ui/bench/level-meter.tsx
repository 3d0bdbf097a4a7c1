import type { EarView } from '../../core/view/bench-view';
import './level-meter.css';

const BARS = 12;

/** Loudness as bars that grow to the right: a bar is either there or not, so that it can be read from afar. */
export function LevelMeter({ level, state }: { readonly level: number; readonly state: EarView['state'] }) {
  const lit = state === 'listening' || state === 'too-loud' ? Math.round(Math.min(1, Math.max(0, level)) * BARS) : 0;
  return (
    <svg class={`level level-${state}`} viewBox={`0 0 ${BARS * 10} 30`} aria-hidden="true">
      {Array.from({ length: BARS }, (_, i) => {
        const height = 8 + (i * 22) / (BARS - 1);
        return (
          <rect
            key={i}
            class={i < lit ? 'level-bar level-lit' : 'level-bar'}
            x={i * 10 + 1}
            y={30 - height}
            width="7"
            height={height}
          />
        );
      })}
    </svg>
  );
}
