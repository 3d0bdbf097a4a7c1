import type { LiveGrammar } from './grammar';
import { type WordGraph, wordGraph } from './word-graph';

/** Stands for any word the model knows and the list does not. */
const ANY_OTHER = '[unk]';

/**
 * A live grammar as the phrase list of a recogniser that makes a bigram model of it. Each step of the word graph is
 * in one phrase at least, which bounds the list by the size of the graph; sentences are whole, so that they begin and
 * end as ours do. A bigram allows more than the grammar: what is heard must go through `interpret`.
 */
export function toPhraseList(live: LiveGrammar): readonly string[] {
  const graph = wordGraph(live);
  const before = wordsBefore(graph);
  const after = wordsAfter(graph);
  const covered = new Set<string>();
  const phrases: string[] = [];
  for (const [from, state] of graph.states.entries())
    for (const [word, to] of state.next) {
      if (covered.has(`${from} ${word}`)) continue;
      const phrase = [...(before[from] ?? []), word, ...(after[to] ?? [])];
      for (const step of stepsOf(graph, phrase)) covered.add(step);
      phrases.push(phrase.join(' '));
    }
  return [...phrases, ANY_OTHER];
}

/** The fewest words from the start to each state. */
function wordsBefore({ states }: WordGraph): readonly (readonly string[])[] {
  const before: (readonly string[])[] = [[]];
  const open = [0];
  for (const from of open)
    for (const [word, to] of states[from]?.next ?? []) {
      if (before[to]) continue;
      before[to] = [...(before[from] ?? []), word];
      open.push(to);
    }
  return before;
}

/** The fewest words from each state to the end of a sentence. */
function wordsAfter({ states }: WordGraph): readonly (readonly string[])[] {
  const into = states.map((): [number, string][] => []);
  for (const [from, { next }] of states.entries()) for (const [word, to] of next) into[to]?.push([from, word]);
  const after: (readonly string[])[] = [];
  const open = [...states.keys()].filter((state) => states[state]?.isEnd);
  for (const end of open) after[end] = [];
  for (const to of open)
    for (const [from, word] of into[to] ?? []) {
      if (after[from]) continue;
      after[from] = [word, ...(after[to] ?? [])];
      open.push(from);
    }
  return after;
}

function stepsOf({ states }: WordGraph, phrase: readonly string[]): readonly string[] {
  let at = 0;
  return phrase.map((word) => {
    const step = `${at} ${word}`;
    at = states[at]?.next.get(word) ?? 0;
    return step;
  });
}
