import commands from '../../grammars/en/commands.jsgf?raw';
import lexicon from '../../grammars/en/lexicon.txt?raw';
import numbers from '../../grammars/en/numbers.jsgf?raw';
import replies from '../../grammars/en/replies.yaml';
import screen from '../../grammars/en/screen.yaml';
import { type Tongue, tongueOf } from '../core/tongue';
import { checkScreenWords, type ScreenWords } from '../ui/words/words';

/** The language the page was built with. Its files were checked by the tests, so a broken one is a bug. */
export function builtInLanguage(): { readonly tongue: Tongue; readonly screen: ScreenWords } {
  const tongue = tongueOf({ commands, numbers, lexicon, replies });
  const words = checkScreenWords(screen);
  if (!tongue.ok) throw new Error(`the language files are broken: ${JSON.stringify(tongue.error)}`);
  if (!words.ok) throw new Error(`the screen words are broken: ${JSON.stringify(words.error)}`);
  return { tongue: tongue.value, screen: words.value };
}
