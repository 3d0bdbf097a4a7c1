import { useState } from 'preact/hooks';
import { millimetres, type UnitIn } from '../../core/fastening/quantity';
import type { Wrench } from '../../core/fastening/wrench';
import { useWords } from '../words/words-context';

const UNITS: readonly UnitIn<'torque'>[] = ['N·m', 'lbf·ft', 'lbf·in', 'kgf·m', 'kgf·cm', 'ozf·in'];

/** What is read off a wrench: all of it but what only the program gives it. */
export type WrenchRead = Omit<Wrench, 'id' | 'dropped'>;

type WrenchFormProps = {
  /** The wrench that is changed; left out for a new one. */
  readonly wrench?: Wrench;
  readonly onSave: (read: WrenchRead) => void;
  /** Only where there is something to leave as it was. */
  readonly onLeave?: () => void;
};

/** A wrench as its owner reads it off the scale. The unit is asked for first: no number here has a default one. */
export function WrenchForm({ wrench, onSave, onLeave }: WrenchFormProps) {
  const w = useWords();
  const [least, setLeast] = useState(wrench ? String(wrench.least) : '');
  return (
    <form
      class="setup-row"
      onSubmit={(event) => {
        event.preventDefault();
        const form = event.currentTarget;
        onSave(wrenchRead(new FormData(form)));
        form.reset();
        setLeast('');
      }}
    >
      <label class="field">
        {w('wrench-name')}
        <input name="say" type="text" required maxLength={60} autocomplete="off" defaultValue={wrench?.say} />
      </label>
      <label class="field">
        {w('wrench-unit')}
        <select name="unit" required>
          <option value="" />
          {UNITS.map((unit) => (
            <option key={unit} value={unit} selected={unit === wrench?.unit}>
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
        <input name="most" type="number" required min={least || 0} step="any" defaultValue={wrench?.most} />
      </label>
      <label class="field">
        {w('wrench-graduation')}
        <input name="graduation" type="number" required min={0.01} step="any" defaultValue={wrench?.graduation} />
      </label>
      <label class="field">
        {w('wrench-lever')}
        <input name="lever" type="number" min={50} max={2000} step="any" defaultValue={wrench?.lever} />
      </label>
      <label class="field">
        {w('wrench-calibration')}
        <input name="due" type="date" defaultValue={wrench?.calibrationDue} />
      </label>
      <button type="submit" class="button">
        {w(wrench ? 'setup-save' : 'setup-add')}
      </button>
      {onLeave && (
        <button type="button" class="button button-plain" onClick={onLeave}>
          {w('setup-leave')}
        </button>
      )}
    </form>
  );
}

/** Reads a form whose fields the browser has already held to be present and in range. */
function wrenchRead(form: FormData): WrenchRead {
  const text = (name: string) => String(form.get(name) ?? '').trim();
  const lever = text('lever');
  const due = text('due');
  return {
    say: text('say'),
    unit: UNITS.find((unit) => unit === text('unit')) ?? 'N·m',
    least: Number(text('least')),
    most: Number(text('most')),
    graduation: Number(text('graduation')),
    ...(lever === '' ? {} : { lever: millimetres(Number(lever)) }),
    ...(due === '' ? {} : { calibrationDue: due }),
  };
}
