import { useState } from 'preact/hooks';
import { assertNever } from '../../core/result';
import type { ReadingTrouble, ReadingView } from '../../core/voice-profile/reading-view';
import { LevelMeter } from '../bench/level-meter';
import type { OnUi } from '../events';
import { Sheet } from '../sheet';
import type { PlainKey } from '../words/words';
import { useWords } from '../words/words-context';
import './reading-sheet.css';

type Reading = Extract<ReadingView, { readonly state: 'reading' }>;
type Done = Extract<ReadingView, { readonly state: 'done' }>;

const LAST: Readonly<Record<NonNullable<Reading['last']>, PlainKey>> = {
  good: 'line-good',
  unlike: 'line-unlike',
  'too-quiet': 'line-too-quiet',
  'too-loud': 'line-too-loud',
  'too-noisy': 'line-too-noisy',
  nothing: 'line-nothing',
};

const FOUND: Readonly<Record<Done['found'], PlainKey>> = {
  sure: 'reading-sure',
  fair: 'reading-fair',
  'fits-already': 'reading-fits-already',
};

const TROUBLE: Readonly<Record<ReadingTrouble, PlainKey>> = {
  'no-microphone': 'microphone-silent',
  refused: 'microphone-refused',
  'other-recogniser': 'reading-other-recogniser',
  'too-few': 'reading-too-few',
  model: 'reading-model',
  'not-kept': 'reading-not-kept',
};

type ReadingSheetProps = { readonly reading: ReadingView; readonly people: readonly string[]; readonly on: OnUi };

/** A few lines read aloud, one at a time, and what they taught. It can be put away at any moment. */
export function ReadingSheet({ reading, people, on }: ReadingSheetProps) {
  const w = useWords();
  return (
    <Sheet title={w('setup-voices')} onClose={() => on({ type: 'reading-close' })}>
      <Stage reading={reading} people={people} on={on} />
    </Sheet>
  );
}

function Stage({ reading, people, on }: ReadingSheetProps) {
  const w = useWords();
  switch (reading.state) {
    case 'closed':
      return null;
    case 'asking':
      return <Asking people={people} on={on} />;
    case 'waiting':
      return <p role="status">{w('reading-waiting')}</p>;
    case 'reading':
      return <Line reading={reading} on={on} />;
    case 'learning':
      return <p role="status">{w('reading-learning')}</p>;
    case 'done':
      return (
        <div role="status">
          <p>{w(FOUND[reading.found])}</p>
          <p>{w('reading-levels', { voice: Math.round(reading.voiceDb), room: Math.round(reading.noiseDb) })}</p>
        </div>
      );
    case 'failed':
      return (
        <div role="alert">
          <p>{w(TROUBLE[reading.why])}</p>
        </div>
      );
    default:
      return assertNever(reading);
  }
}

function Asking({ people, on }: Pick<ReadingSheetProps, 'people' | 'on'>) {
  const w = useWords();
  const [person, setPerson] = useState(people[0] ?? '');
  const [headset, setHeadset] = useState('');
  return (
    <form
      class="reading"
      onSubmit={(event) => {
        event.preventDefault();
        on({ type: 'reading-begin', person: person.trim(), headset: headset.trim() });
      }}
    >
      <p>{w('reading-how')}</p>
      <NameField label={w('reading-person')} value={person} onValue={setPerson} />
      <NameField label={w('reading-headset')} value={headset} onValue={setHeadset} />
      <button type="submit" class="button">
        {w('reading-begin')}
      </button>
    </form>
  );
}

function Line({ reading, on }: { readonly reading: Reading; readonly on: OnUi }) {
  const w = useWords();
  const { line, of, text, level, last } = reading;
  return (
    <div class="reading">
      <p>{w('reading-line', { line, of })}</p>
      <p class="reading-text" aria-live="polite">
        {text}
      </p>
      <LevelMeter level={level} state="listening" />
      <p role="status" class="reading-verdict">
        {last ? w(LAST[last]) : ''}
      </p>
      <button type="button" class="button button-plain" onClick={() => on({ type: 'reading-skip' })}>
        {w('reading-skip')}
      </button>
    </div>
  );
}

function NameField(props: { label: string; value: string; onValue: (value: string) => void }) {
  return (
    <label class="field">
      {props.label}
      <input
        type="text"
        required
        pattern=".*\S.*"
        maxLength={60}
        autocomplete="off"
        value={props.value}
        onInput={(event) => props.onValue(event.currentTarget.value)}
      />
    </label>
  );
}
