import type { OnUi } from '../events';
import { useWords } from '../words/words-context';
import type { Settings } from './settings';

/** Null until they have been looked for. */
export type Microphones = {
  /** False while the browser does not tell their names. */
  readonly named: boolean;
  readonly found: readonly { readonly id: string; readonly name: string }[];
} | null;

type MicrophoneChoiceProps = {
  readonly settings: Pick<Settings, 'microphone' | 'microphoneName'>;
  readonly microphones: Microphones;
  readonly on: OnUi;
};

/** Which microphone listens. One that was chosen and is gone stays in the list, so that it is seen what is missing. */
export function MicrophoneChoice({ settings, microphones, on }: MicrophoneChoiceProps) {
  const w = useWords();
  const { microphone, microphoneName } = settings;
  const found = microphones?.found ?? [];
  const isListed = microphone === '' || found.some(({ id }) => id === microphone);
  // Nothing is said to be gone that was not looked for by name.
  const isGone = !isListed && microphones?.named === true;
  const chosen = { id: microphone, name: isGone ? w('microphone-not-here', { name: microphoneName }) : microphoneName };
  const offered = isListed ? found : [...found, chosen];
  return (
    <>
      <label class="field">
        {w('microphone-which')}
        <select
          value={microphone}
          onChange={({ currentTarget: { value } }) =>
            on({ type: 'choose-microphone', id: value, name: found.find(({ id }) => id === value)?.name ?? '' })
          }
        >
          <option value="">{w('microphone-any')}</option>
          {offered.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      {microphones?.named === false && <p class="quiet">{w('microphone-unnamed')}</p>}
      {isGone && <p>{w('microphone-gone', { name: microphoneName })}</p>}
    </>
  );
}
