import type { RuleName } from '../core/job/command';
import type { ScreenKey, ScreenWords } from '../ui/words/words';

/** What stands on the button of a command, keyed by the command; none where no button has it. */
export function buttonLabel(rule: RuleName, words: ScreenWords): string | undefined {
  const key = `button-${rule}`;
  return isKey(key, words) ? words[key] : undefined;
}

const isKey = (key: string, words: ScreenWords): key is ScreenKey => Object.hasOwn(words, key);
