import type { OnUi } from '../events';
import { useWords } from '../words/words-context';
import { Choice } from './choice';
import type { Settings } from './settings';

export function ScreenSetup({ settings, on }: { readonly settings: Settings; readonly on: OnUi }) {
  const w = useWords();
  return (
    <section>
      <h2>{w('setup-screen')}</h2>
      <Choice
        legend={w('theme-which')}
        value={settings.theme}
        options={[
          { value: 'system', label: w('theme-system') },
          { value: 'day', label: w('theme-day') },
          { value: 'dim', label: w('theme-dim') },
        ]}
        onChoose={(value) => on({ type: 'setting-changed', key: 'theme', value })}
      />
      <Choice
        legend={w('text-which')}
        value={settings.textSize}
        options={[
          { value: 'usual', label: w('text-usual') },
          { value: 'large', label: w('text-large') },
          { value: 'largest', label: w('text-largest') },
        ]}
        onChoose={(value) => on({ type: 'setting-changed', key: 'textSize', value })}
      />
    </section>
  );
}
