import type { IsoDay, Wrench } from '../../core/fastening/wrench';
import type { OnUi } from '../events';
import { useWords } from '../words/words-context';
import { WrenchForm } from './wrench-form';
import { newWrenchId } from './wrench-id';
import { WrenchLine } from './wrench-line';

type WrenchSetupProps = { readonly wrenches: readonly Wrench[]; readonly today: IsoDay; readonly on: OnUi };

/** The torque wrenches at hand: what each can be set to, and whether its reading is to be trusted. */
export function WrenchSetup({ wrenches, today, on }: WrenchSetupProps) {
  const w = useWords();
  const save = (value: readonly Wrench[]) => on({ type: 'setting-changed', key: 'wrenches', value });
  return (
    <section>
      <h2>{w('setup-wrenches')}</h2>
      <p>{w('setup-wrenches-means')}</p>
      <ul class="setup-list">
        {wrenches.map((wrench) => (
          <WrenchLine
            key={wrench.id}
            wrench={wrench}
            today={today}
            onChange={(changed) => save(wrenches.map((x) => (x.id === changed.id ? changed : x)))}
            onRemove={() => save(wrenches.filter((x) => x.id !== wrench.id))}
          />
        ))}
      </ul>
      <WrenchForm
        onSave={(read) => {
          const taken = wrenches.map(({ id }) => id);
          save([...wrenches, { id: newWrenchId(read.say, taken), dropped: false, ...read }]);
        }}
      />
    </section>
  );
}
