import { useState } from 'preact/hooks';
import type { OnUi } from '../events';
import { useWords } from '../words/words-context';

type PeopleSetupProps = { readonly people: readonly string[]; readonly on: OnUi };

/** Who may stand in the record: as worker, or as the second person who checked. */
export function PeopleSetup({ people, on }: PeopleSetupProps) {
  const w = useWords();
  const [name, setName] = useState('');
  const save = (value: readonly string[]) => on({ type: 'setting-changed', key: 'people', value });
  return (
    <section>
      <h2>{w('setup-people')}</h2>
      <ul class="setup-list">
        {people.map((person) => (
          <li key={person}>
            <span>{person}</span>
            <button
              type="button"
              class="button button-plain"
              aria-label={w('job-action', { action: w('setup-remove'), title: person })}
              onClick={() => save(people.filter((p) => p !== person))}
            >
              {w('setup-remove')}
            </button>
          </li>
        ))}
      </ul>
      <form
        class="setup-row"
        onSubmit={(event) => {
          event.preventDefault();
          const added = name.trim();
          if (added !== '' && !people.includes(added)) save([...people, added]);
          setName('');
        }}
      >
        <label class="field">
          {w('setup-person')}
          <input
            type="text"
            required
            maxLength={60}
            autocomplete="off"
            value={name}
            onInput={(event) => setName(event.currentTarget.value)}
          />
        </label>
        <button type="submit" class="button">
          {w('setup-add')}
        </button>
      </form>
    </section>
  );
}
