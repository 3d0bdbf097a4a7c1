import type { EarView } from '../../core/view/bench-view';
import { ScrollArea } from '../scroll-area';
import type { PlainKey } from '../words/words';
import { useWords } from '../words/words-context';
import { LevelMeter } from './level-meter';
import './ear-strip.css';

export const EAR_STATE: Readonly<Record<EarView['state'], PlainKey>> = {
  off: 'ear-off',
  loading: 'ear-loading',
  listening: 'ear-listening',
  speaking: 'ear-speaking',
  'too-loud': 'ear-too-loud',
  shut: 'ear-shut',
  waiting: 'ear-waiting',
  failed: 'ear-failed',
};

export const HEARD_HOW: Readonly<Record<NonNullable<EarView['heard']>['how'], PlainKey>> = {
  sure: 'heard-sure',
  'hardly-sure': 'heard-hardly-sure',
  touch: 'heard-touch',
  typed: 'heard-typed',
  rejected: 'heard-rejected',
};

type EarStripProps = {
  readonly ear: EarView;
  /** The last thing the program said, as text. */
  readonly said: string | null;
};

/** What the ear is doing, what it last heard and how sure it was, what that did, and what was answered. */
export function EarStrip({ ear, said }: EarStripProps) {
  const w = useWords();
  return (
    <ScrollArea class="ear" label={w('ear-label')}>
      <div class="ear-now">
        <LevelMeter level={ear.level} state={ear.state} />
        <p class={`ear-state ear-state-${ear.state}`}>{ear.trouble ?? w(EAR_STATE[ear.state])}</p>
      </div>
      <p class="ear-heard">
        {ear.heard && (
          <>
            <span class={`ear-how ear-how-${ear.heard.how}`}>{w(HEARD_HOW[ear.heard.how])}</span>{' '}
            {ear.heard.words !== '' && (
              <q class={ear.heard.how === 'rejected' ? 'ear-words ear-words-rejected' : 'ear-words'}>
                {ear.heard.words}
              </q>
            )}{' '}
          </>
        )}
        {/* This and what was answered are read out by a screen reader as they change; nothing else on the Bench is. */}
        <span class="ear-did" role="status">
          {ear.heard?.did}
        </span>
      </p>
      <p class="ear-said" role="status">
        {said}
      </p>
    </ScrollArea>
  );
}
