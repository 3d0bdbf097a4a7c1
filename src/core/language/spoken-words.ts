import type { LiveGrammar } from './grammar';
import { all } from './jsgf/references';
import { VOID } from './phrase';
import { readTag, type Tag } from './tags';
import { figures, plainWords } from './words';

/** The rules of a language that name the single digits and the decimal point. */
const DIGIT_RULE = 'digit';
const POINT_RULE = 'point';

/**
 * The words of an utterance, figures said digit by digit: typed "bolt 12 done" becomes "bolt one two done", which every
 * language's number rule must allow. Figures whose digits are not in the live grammar are left as they are, and so
 * match nothing.
 */
export function spokenWords(live: LiveGrammar, text: string): readonly string[] {
  return plainWords(text).flatMap((word) => {
    if (figures(word) === undefined) return [word];
    const said = [...word].map((sign) =>
      sign === '.'
        ? wordFor(live, POINT_RULE, (tag) => tag.kind === 'point')
        : wordFor(live, DIGIT_RULE, (tag) => tag.kind === 'number' && tag.value === Number(sign)),
    );
    return said.every((spoken) => spoken !== undefined) ? said : [word];
  });
}

function wordFor(live: LiveGrammar, rule: string, fits: (tag: Tag) => boolean): string | undefined {
  for (const part of all(live.parts[rule] ?? VOID)) {
    const tag = part.kind === 'tagged' ? readTag(part.tag) : undefined;
    const found = tag && fits(tag) ? all(part).find((inside) => inside.kind === 'word')?.text : undefined;
    if (found !== undefined) return found;
    if (part.kind === 'rule') {
      const deeper = wordFor(live, part.name, fits);
      if (deeper !== undefined) return deeper;
    }
  }
  return undefined;
}
