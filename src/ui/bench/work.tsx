import type { BenchView } from '../../core/view/bench-view';
import { ScrollArea } from '../scroll-area';
import type { PlainKey } from '../words/words';
import { useWords } from '../words/words-context';
import { ClockFace } from './clock-face';
import './work.css';

const MOOD: Readonly<Record<BenchView['mood'], PlainKey | null>> = {
  working: null,
  asking: 'mood-asking',
  paused: 'mood-paused',
  closed: 'mood-closed',
};

type WorkProps = { readonly view: BenchView; readonly onShowWrenches: () => void };

/** What is being worked: the value huge, the line under it, the swing on a clock. A question comes before the value. */
export function Work({ view, onShowWrenches }: WorkProps) {
  const w = useWords();
  const mood = MOOD[view.mood];
  const line = <p class="work-line">{view.line}</p>;
  return (
    <ScrollArea class={`work work-${view.mood}`} label={w('work-label')}>
      {mood && <p class="work-mood">{w(mood)}</p>}
      {view.mood === 'asking' && line}
      {(view.value || view.swing) && (
        <div class="work-figures">
          {view.value && <p class="work-value">{view.value}</p>}
          {view.valueAlso && <p class="work-also">{view.valueAlso}</p>}
          {view.swing && (
            <div class="work-clock">
              <ClockFace swing={view.swing} />
            </div>
          )}
        </div>
      )}
      {view.mood !== 'asking' && line}
      {view.wrenches.length > 0 && (
        <button type="button" class="work-wrenches" onClick={onShowWrenches}>
          {w('wrenches-other')}
        </button>
      )}
      {view.swing && <p class="work-swing">{view.swing.words}</p>}
    </ScrollArea>
  );
}
