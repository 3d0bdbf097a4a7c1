import { useId, useState } from 'preact/hooks';
import type { OnUi } from '../events';
import { LineNumber } from '../line-number';
import { useWords } from '../words/words-context';
import './begin-job.css';

export type ProcedureChoice = {
  /** What it is called by in its list when a job is begun by voice; null where none can be. Left out: outside of a list. */
  readonly number?: number | null;
  readonly id: string;
  readonly title: string;
  readonly edition: string;
  readonly machine: string;
  readonly demonstration: boolean;
};

type BeginJobProps = {
  readonly procedures: readonly ProcedureChoice[];
  /** Chosen already, where the person has come from it. */
  readonly chosen?: ProcedureChoice;
  readonly people: readonly string[];
  readonly on: OnUi;
};

/** Which document, which machine, who: all that a job needs before its first line. */
export function BeginJob({ procedures, chosen: given, people, on }: BeginJobProps) {
  const w = useWords();
  const id = useId();
  const [chosen, setChosen] = useState<string | null>(given?.id ?? null);
  const [machine, setMachine] = useState(given?.machine ?? '');
  const [who, setWho] = useState(people[0] ?? '');
  const procedure = procedures.find((p) => p.id === chosen);
  return (
    <form
      class="begin"
      onSubmit={(event) => {
        event.preventDefault();
        if (procedure) on({ type: 'begin-job', procedure: procedure.id, machine: machine.trim(), who: who.trim() });
      }}
    >
      <fieldset class="begin-procedures">
        <legend>{w('begin-procedure')}</legend>
        {procedures.map((p) => (
          <label key={p.id} class="begin-procedure">
            <input
              type="radio"
              name="procedure"
              required
              checked={p.id === chosen}
              onChange={() => {
                setChosen(p.id);
                if (machine === '' || machine === procedure?.machine) setMachine(p.machine);
              }}
            />
            <span>
              <b>
                <LineNumber number={p.number ?? null} />
                {p.title}
              </b>
              <span class="begin-detail">
                {w('procedure-edition', { edition: p.edition })}
                {p.demonstration && <strong class="mark">{w('demonstration-mark')}</strong>}
              </span>
            </span>
          </label>
        ))}
      </fieldset>
      <label class="field" for={`${id}-machine`}>
        {w('begin-machine')}
        <input
          id={`${id}-machine`}
          type="text"
          required
          maxLength={120}
          value={machine}
          onInput={(event) => setMachine(event.currentTarget.value)}
        />
      </label>
      <label class="field" for={`${id}-who`}>
        {w('begin-who')}
        <input
          id={`${id}-who`}
          type="text"
          required
          maxLength={60}
          list={`${id}-people`}
          autocomplete="off"
          value={who}
          onInput={(event) => setWho(event.currentTarget.value)}
        />
      </label>
      <datalist id={`${id}-people`}>
        {people.map((person) => (
          <option key={person} value={person} />
        ))}
      </datalist>
      <button type="submit" class="button button-first">
        {w('begin-go')}
      </button>
    </form>
  );
}
