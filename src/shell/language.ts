import commands from '../../grammars/en/commands.jsgf?raw';
import lexicon from '../../grammars/en/lexicon.txt?raw';
import numbers from '../../grammars/en/numbers.jsgf?raw';
import replies from '../../grammars/en/replies.yaml';
import screen from '../../grammars/en/screen.yaml?first';
import { type Tongue, tongueOf } from '../core/tongue';
import type { ScreenWords } from '../ui/words/words';

type BuiltIn = {
  readonly tongue: Tongue;
  /** Those of the first screen and the Bench; the others join them with `rest`. */
  readonly screen: ScreenWords;
  readonly rest: () => Promise<void>;
};

/** The language the page was built with. Its files were checked by the tests, so a broken one is a bug. */
export function builtInLanguage(): BuiltIn {
  const tongue = tongueOf({ commands, numbers, lexicon, replies });
  if (!tongue.ok) throw new Error(`the language files are broken: ${JSON.stringify(tongue.error)}`);
  // Held to its keys and slots by tests/ui: the check itself would be weight that every start carries.
  const words = screen as ScreenWords;
  const rest = async (): Promise<void> => {
    Object.assign(words, (await import('../../grammars/en/screen.yaml?later')).default);
  };
  return { tongue: tongue.value, screen: words, rest };
}
