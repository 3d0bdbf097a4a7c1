import type { Wrench } from '../../core/fastening/wrench';
import type { OnUi } from '../events';
import { useWords } from '../words/words-context';
import { Choice } from './choice';
import type { Settings } from './settings';
import { WrenchForm } from './wrench-form';

type WrenchSetupProps = {
  readonly wrenches: readonly Wrench[];
  readonly torqueUnit: Settings['torqueUnit'];
  readonly on: OnUi;
};

/** The torque wrenches at hand: what each can be set to, and whether its reading is to be trusted. */
export function WrenchSetup({ wrenches, torqueUnit, on }: WrenchSetupProps) {
  const w = useWords();
  const save = (value: readonly Wrench[]) => on({ type: 'setting-changed', key: 'wrenches', value });
  return (
    <section>
      <h2>{w('setup-wrenches')}</h2>
      <p>{w('setup-wrenches-means')}</p>
      <ul class="setup-list">
        {wrenches.map((wrench) => (
          <li key={wrench.id}>
            <span>
              <b>{wrench.say}</b>{' '}
              {w('wrench-range', {
                least: wrench.least,
                most: wrench.most,
                graduation: wrench.graduation,
                unit: wrench.unit,
              })}
              <br />
              <span class="quiet">
                {wrench.calibrationDue ? w('wrench-due', { day: wrench.calibrationDue }) : w('wrench-due-unknown')}
              </span>
              {wrench.dropped && <strong class="mark">{w('wrench-dropped')}</strong>}
            </span>
            <button
              type="button"
              class="button button-plain"
              onClick={() => save(wrenches.map((x) => (x.id === wrench.id ? { ...x, dropped: !x.dropped } : x)))}
            >
              {w(wrench.dropped ? 'wrench-cleared' : 'wrench-mark-dropped')}
            </button>
            <button
              type="button"
              class="button button-plain"
              aria-label={w('job-action', { action: w('setup-remove'), title: wrench.say })}
              onClick={() => save(wrenches.filter((x) => x.id !== wrench.id))}
            >
              {w('setup-remove')}
            </button>
          </li>
        ))}
      </ul>
      <WrenchForm taken={wrenches.map((x) => x.id)} onAdd={(wrench) => save([...wrenches, wrench])} />
      <Choice
        legend={w('setup-torque-unit')}
        value={torqueUnit}
        options={[
          { value: 'as-printed', label: w('unit-as-printed') },
          { value: 'N·m', label: 'N·m' },
          { value: 'lbf·ft', label: 'lbf·ft' },
        ]}
        onChoose={(value) => on({ type: 'setting-changed', key: 'torqueUnit', value })}
      />
    </section>
  );
}
