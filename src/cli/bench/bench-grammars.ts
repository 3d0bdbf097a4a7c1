import type { LiveCommand, LiveGrammar } from '../../core/language/grammar';
import { parseJsgf } from '../../core/language/jsgf/parse-jsgf';
import type { Tongue } from '../../core/tongue';
import { typedRecogniser } from '../../speech/typed';
import { openWorkshop } from '../workshop';

/** A foreign JSGF text as one harmless command. */
export function foreignGrammar(text: string): LiveGrammar {
  const parsed = parseJsgf(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.error));
  const rules = parsed.value.rules;
  const top = rules.find(({ isPublic }) => isPublic);
  if (!top) throw new Error('no public rule');
  return {
    revision: 'foreign',
    commands: [{ rule: top.name, manner: 'harmless', slots: {}, phrase: top.phrase }],
    parts: Object.fromEntries(rules.map(({ name, phrase }) => [name, phrase])),
  };
}

/** A grammar of lone words. */
export function wordGrammar(words: readonly string[]): LiveGrammar {
  const commands = words.map(
    (text): LiveCommand => ({ rule: text, manner: 'harmless', slots: {}, phrase: { kind: 'word', text } }),
  );
  return { revision: 'words', commands, parts: {} };
}

/** What can be said in the middle of a tightening pass of a shipped procedure, reached by typing the way there. */
export async function tighteningGrammar(
  tongue: Tongue,
  procedure: string,
  way: readonly string[],
): Promise<LiveGrammar> {
  const typed = typedRecogniser();
  let live: LiveGrammar | null = null;
  const opened = await openWorkshop(procedure, tongue, {
    ...typed,
    arm: (grammar) => {
      live = grammar;
      typed.arm(grammar);
    },
  });
  if (!opened.ok) throw new Error(JSON.stringify(opened.error));
  for (const words of way) {
    opened.value.type(words);
    await opened.value.idle();
  }
  if (!live) throw new Error('the desk armed nothing');
  return live;
}
