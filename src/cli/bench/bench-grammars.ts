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

/** The middle of the first pass of the shipped demonstration job. */
const PROCEDURE = 'procedures/tarnbeck-head-slice.yaml';
const WAY = [
  ...Array.from({ length: 5 }, () => 'this step is done'),
  'it reads printed face to the radiator',
  ...Array.from({ length: 2 }, () => 'this step is done'),
  'i have the time',
  'set at thirty',
  'bolt one done',
  'bolt two done',
];

/** What can be said in the middle of a tightening pass of a shipped procedure, reached by typing the way there. */
export async function tighteningGrammar(tongue: Tongue): Promise<LiveGrammar> {
  const typed = typedRecogniser();
  let live: LiveGrammar | null = null;
  const opened = await openWorkshop(PROCEDURE, tongue, {
    ...typed,
    arm: (grammar) => {
      live = grammar;
      typed.arm(grammar);
    },
  });
  if (!opened.ok) throw new Error(JSON.stringify(opened.error));
  for (const words of WAY) {
    opened.value.type(words);
    await opened.value.idle();
  }
  return inThePass(live);
}

/** Typed words can go astray without a word when a document changes; a benchmark of another place would measure nothing. */
function inThePass(live: LiveGrammar | null): LiveGrammar {
  if (!live?.commands.some(({ rule }) => rule === 'bolt-done')) throw new Error('the way does not lead into a pass');
  return live;
}
