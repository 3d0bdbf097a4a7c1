import type { OnUi } from '../events';
import { useWords } from '../words/words-context';
import { Choice } from './choice';

/** A language of the program: its code, and its name as its own speakers write it. */
export type LanguageChoice = { readonly code: string; readonly name: string };

type LanguageSetupProps = {
  readonly languages: readonly LanguageChoice[];
  /** The one that is spoken now. */
  readonly spoken: string;
  readonly on: OnUi;
};

/** The language of everything heard, said and shown. Each is named in itself, for whoever reads no other. */
export function LanguageSetup({ languages, spoken, on }: LanguageSetupProps) {
  const w = useWords();
  return (
    <section>
      <h2>{w('setup-language')}</h2>
      <Choice
        legend={w('language-which')}
        value={spoken}
        options={languages.map(({ code, name }) => ({ value: code, label: name }))}
        onChoose={(value) => on({ type: 'setting-changed', key: 'language', value })}
      />
      <p class="quiet">{w('language-means')}</p>
    </section>
  );
}
