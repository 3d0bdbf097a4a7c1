import { useState } from 'preact/hooks';
import { millimetres, type UnitIn } from '../../core/fastening/quantity';
import type { Wrench } from '../../core/fastening/wrench';
import { useWords } from '../words/words-context';
import { newWrenchId } from './wrench-id';

const UNITS: readonly UnitIn<'torque'>[] = ['N·m', 'lbf·ft', 'lbf·in', 'kgf·m', 'kgf·cm', 'ozf·in'];

type WrenchFormProps = {
  /** Ids that are in use. */
  readonly taken: readonly string[];
  readonly onAdd: (wrench: Wrench) => void;
};

/** A wrench as its owner reads it off the scale. The unit is asked for first: no number here has a default one. */
export function WrenchForm({ taken, onAdd }: WrenchFormProps) {
  const w = useWords();
  const [least, setLeast] = useState('');
  return (
    <form
      class="setup-row"
      onSubmit={(event) => {
        event.preventDefault();
        const form = event.currentTarget;
        onAdd(wrenchFrom(new FormData(form), taken));
        form.reset();
        setLeast('');
      }}
    >
      <label class="field">
        {w('wrench-name')}
        <input name="say" type="text" required maxLength={60} autocomplete="off" />
      </label>
      <label class="field">
        {w('wrench-unit')}
        <select name="unit" required>
          <option value="" />
          {UNITS.map((unit) => (
            <option key={unit} value={unit}>
              {unit}
            </option>
          ))}
        </select>
      </label>
      <label class="field">
        {w('wrench-least')}
        <input
          name="least"
          type="number"
          required
          min={0}
          step="any"
          value={least}
          onInput={(event) => setLeast(event.currentTarget.value)}
        />
      </label>
      <label class="field">
        {w('wrench-most')}
        <input name="most" type="number" required min={least || 0} step="any" />
      </label>
      <label class="field">
        {w('wrench-graduation')}
        <input name="graduation" type="number" required min={0.01} step="any" />
      </label>
      <label class="field">
        {w('wrench-lever')}
        <input name="lever" type="number" min={50} max={2000} step="any" />
      </label>
      <label class="field">
        {w('wrench-calibration')}
        <input name="due" type="date" />
      </label>
      <button type="submit" class="button">
        {w('setup-add')}
      </button>
    </form>
  );
}

/** Reads a form whose fields the browser has already held to be present and in range. */
function wrenchFrom(form: FormData, taken: readonly string[]): Wrench {
  const text = (name: string) => String(form.get(name) ?? '').trim();
  const say = text('say');
  const lever = text('lever');
  const due = text('due');
  return {
    id: newWrenchId(say, taken),
    say,
    unit: UNITS.find((unit) => unit === text('unit')) ?? 'N·m',
    least: Number(text('least')),
    most: Number(text('most')),
    graduation: Number(text('graduation')),
    ...(lever === '' ? {} : { lever: millimetres(Number(lever)) }),
    ...(due === '' ? {} : { calibrationDue: due }),
    dropped: false,
  };
}
