import { useId } from 'preact/hooks';
import './choice.css';

type ChoiceProps<T extends string> = {
  readonly legend: string;
  readonly options: readonly { readonly value: T; readonly label: string; readonly disabled?: boolean }[];
  readonly value: T;
  readonly onChoose: (value: T) => void;
};

/** One of a few, all in sight. */
export function Choice<T extends string>({ legend, options, value, onChoose }: ChoiceProps<T>) {
  const name = useId();
  return (
    <fieldset class="choice">
      <legend>{legend}</legend>
      {options.map((option) => (
        <label key={option.value} class="choice-option">
          <input
            type="radio"
            name={name}
            checked={option.value === value}
            disabled={option.disabled ?? false}
            onChange={() => onChoose(option.value)}
          />
          {option.label}
        </label>
      ))}
    </fieldset>
  );
}
