import commands from '../../grammars/en/commands.jsgf?raw';
import lexicon from '../../grammars/en/lexicon.txt?raw';
import numbers from '../../grammars/en/numbers.jsgf?raw';
import replies from '../../grammars/en/replies.yaml';
import screen from '../../grammars/en/screen.yaml';
import { type Tongue, tongueOf } from '../core/tongue';
import type { ScreenWords } from '../ui/words/words';

/** The language the page was built with. Its files were checked by the tests, so a broken one is a bug. */
export function builtInLanguage(): { readonly tongue: Tongue; readonly screen: ScreenWords } {
  const tongue = tongueOf({ commands, numbers, lexicon, replies });
  if (!tongue.ok) throw new Error(`the language files are broken: ${JSON.stringify(tongue.error)}`);
  // Held to its keys and slots by tests/ui: the check itself would be weight that every start carries.
  return { tongue: tongue.value, screen: screen as ScreenWords };
}
