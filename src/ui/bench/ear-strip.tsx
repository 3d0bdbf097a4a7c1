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

export const SURENESS: Readonly<Record<NonNullable<EarView['heard']>['sureness'], PlainKey>> = {
  sure: 'heard-sure',
  fair: 'heard-fair',
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
  const did = ear.heard?.sureness === 'rejected' ? ear.heard.did || w('did-nothing') : ear.heard?.did;
  return (
    <ScrollArea class="ear" label={w('ear-label')}>
      <div class="ear-now">
        <LevelMeter level={ear.level} state={ear.state} />
        <p class={`ear-state ear-state-${ear.state}`}>{ear.trouble ?? w(EAR_STATE[ear.state])}</p>
      </div>
      <p class="ear-heard">
        {ear.heard && (
          <>
            <span class={`ear-sureness ear-sureness-${ear.heard.sureness}`}>{w(SURENESS[ear.heard.sureness])}</span>{' '}
            {ear.heard.words !== '' && (
              <q class={ear.heard.sureness === 'rejected' ? 'ear-words ear-words-rejected' : 'ear-words'}>
                {ear.heard.words}
              </q>
            )}
          </>
        )}
      </p>
      {/* Both are read out by a screen reader as they change; nothing else on the Bench is. */}
      <p class="ear-did" role="status">
        {did === said ? '' : did}
      </p>
      <p class="ear-said" role="status">
        {said}
      </p>
    </ScrollArea>
  );
}
