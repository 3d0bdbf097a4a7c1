import type { BenchView } from '../../core/view/bench-view';
import { ScrollArea } from '../scroll-area';
import type { PlainKey } from '../words/words';
import { useWords } from '../words/words-context';
import './hazards.css';

type Kind = BenchView['hazards'][number]['kind'];

const WORD: Readonly<Record<Kind, PlainKey>> = {
  warning: 'hazard-warning',
  caution: 'hazard-caution',
  note: 'hazard-note',
};

/** The strip that stays as long as its step: what can hurt a person, what can damage the machine, what is good to know. */
export function Hazards({ hazards }: { readonly hazards: BenchView['hazards'] }) {
  const w = useWords();
  if (hazards.length === 0) return null;
  return (
    <ScrollArea class="hazards" label={w('hazards')}>
      <HazardLines hazards={hazards} />
    </ScrollArea>
  );
}

/** The same as lines on a page. */
export function HazardLines({ hazards }: { readonly hazards: BenchView['hazards'] }) {
  const w = useWords();
  return (
    <>
      {hazards.map((h) => (
        <p key={`${h.kind} ${h.text}`} class={`hazard hazard-${h.kind}`}>
          {h.kind !== 'note' && <HazardSign kind={h.kind} />}
          <strong class="hazard-word">{w(WORD[h.kind])}</strong>
          <span>{h.text}</span>
        </p>
      ))}
    </>
  );
}

/** A solid triangle for what can hurt a person, an empty one for what can damage the machine. */
function HazardSign({ kind }: { readonly kind: 'warning' | 'caution' }) {
  return (
    <svg class="hazard-sign" viewBox="0 0 32 28" aria-hidden="true">
      <path class={`hazard-triangle hazard-triangle-${kind}`} d="M16 2L30 26H2Z" />
      <path class={`hazard-bang hazard-bang-${kind}`} d="M16 10V18M16 21.5V23" />
    </svg>
  );
}
