import type { OnUi } from '../events';
import { useWords } from '../words/words-context';
import type { Settings } from './settings';

export type SetupProps = { readonly settings: Settings };
export function Setup({ settings }: SetupProps & { readonly on: OnUi }) {
  const w = useWords();
  return (
    <main class="page">
      <h1>{w('nav-setup')}</h1>
      {settings.theme}
    </main>
  );
}
