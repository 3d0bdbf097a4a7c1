import type { OnUi } from '../events';
import { useWords } from '../words/words-context';
import { Choice } from './choice';
import type { Settings } from './settings';

type UnitsSetupProps = { readonly settings: Pick<Settings, 'torqueUnit' | 'volumeUnit'>; readonly on: OnUi };

/** What stands beside the document's figures. What is said is never one of these: it is the number to be set or read. */
export function UnitsSetup({ settings, on }: UnitsSetupProps) {
  const w = useWords();
  return (
    <section>
      <h2>{w('setup-units')}</h2>
      <p>{w('units-mean')}</p>
      <Choice
        legend={w('setup-torque-unit')}
        value={settings.torqueUnit}
        options={[
          { value: 'as-printed', label: w('unit-as-printed') },
          { value: 'N·m', label: 'N·m' },
          { value: 'lbf·ft', label: 'lbf·ft' },
          { value: 'lbf·in', label: 'lbf·in' },
          { value: 'kgf·m', label: 'kgf·m' },
        ]}
        onChoose={(value) => on({ type: 'setting-changed', key: 'torqueUnit', value })}
      />
      <Choice
        legend={w('setup-volume-unit')}
        value={settings.volumeUnit}
        options={[
          { value: 'as-printed', label: w('unit-printed-pair') },
          { value: 'L', label: 'L' },
          { value: 'US qt', label: 'US qt' },
          { value: 'imp qt', label: 'imp qt' },
        ]}
        onChoose={(value) => on({ type: 'setting-changed', key: 'volumeUnit', value })}
      />
    </section>
  );
}
