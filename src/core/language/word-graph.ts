import { assertNever } from '../result';
import type { LiveGrammar, Phrase } from './grammar';

/**
 * The smallest deterministic automaton of a live grammar: from each state a word leads to one state. No word is
 * listed twice where sentences begin or end alike, so that a recogniser searches each only once.
 * State 0 is the start. Tags and weights are not kept.
 */
export type WordGraph = {
  readonly states: readonly WordState[];
};

export type WordState = {
  /** Whether a sentence may end here. */
  readonly isEnd: boolean;
  readonly next: ReadonlyMap<string, number>;
};

export function wordGraph(live: LiveGrammar): WordGraph {
  const rule = (name: string): Phrase => live.parts[name] ?? { kind: 'void' };
  return phraseGraph({ kind: 'oneOf', parts: live.commands.map((command) => command.phrase) }, rule);
}

export function phraseGraph(phrase: Phrase, rule: (name: string) => Phrase): WordGraph {
  const loose = new LooseGraph(rule);
  const start = loose.state();
  const end = loose.state();
  loose.add(phrase, start, end);
  return smallest(determined(loose, start, end));
}

/** The same sentences but this one. The states along it are copied, so that all others through them stay. */
export function withoutSentence(graph: WordGraph, words: readonly string[]): WordGraph {
  const { states } = graph;
  const path: WordState[] = [];
  let at: number | undefined = 0;
  for (const word of [...words, null]) {
    const state: WordState | undefined = at === undefined ? undefined : states[at];
    if (!state) return graph;
    path.push(state);
    at = word === null ? undefined : state.next.get(word);
  }
  if (!path.at(-1)?.isEnd) return graph;
  // The first copy takes the place of the start; the others are added behind the last state.
  const copies = path.map(({ isEnd, next }, n): WordState => {
    const word = words[n];
    if (word === undefined) return { isEnd: false, next };
    return { isEnd, next: new Map([...next, [word, states.length + n]]) };
  });
  return { states: [...copies.slice(0, 1), ...states.slice(1), ...copies.slice(1)] };
}

/** An automaton with silent moves, built part by part as in Thompson's construction. */
class LooseGraph {
  readonly words: Map<string, number[]>[] = [];
  readonly silent: number[][] = [];

  constructor(private readonly rule: (name: string) => Phrase) {}

  state(): number {
    this.words.push(new Map());
    return this.silent.push([]) - 1;
  }

  add(phrase: Phrase, from: number, to: number): void {
    switch (phrase.kind) {
      case 'word': {
        const targets = this.words[from]?.get(phrase.text);
        if (targets) targets.push(to);
        else this.words[from]?.set(phrase.text, [to]);
        return;
      }
      case 'seq': {
        let at = from;
        for (const [index, part] of phrase.parts.entries()) {
          const next = index === phrase.parts.length - 1 ? to : this.state();
          this.add(part, at, next);
          at = next;
        }
        return;
      }
      case 'oneOf':
        for (const part of phrase.parts) this.add(part, from, to);
        return;
      case 'optional':
        this.silent[from]?.push(to);
        this.add(phrase.part, from, to);
        return;
      case 'repeat': {
        const again = this.state();
        if (phrase.least === 0) this.silent[from]?.push(to);
        this.add(phrase.part, from, again);
        this.add(phrase.part, again, again);
        this.silent[again]?.push(to);
        return;
      }
      case 'tagged':
        this.add(phrase.part, from, to);
        return;
      case 'rule':
        this.add(this.rule(phrase.name), from, to);
        return;
      case 'null':
        this.silent[from]?.push(to);
        return;
      case 'void':
        return;
      default:
        assertNever(phrase);
    }
  }

  /** A set of states with all that silent moves reach from it, in rising order. */
  closed(states: readonly number[]): readonly number[] {
    const seen = new Set<number>();
    const open = [...states];
    for (let state = open.pop(); state !== undefined; state = open.pop()) {
      if (seen.has(state)) continue;
      seen.add(state);
      open.push(...(this.silent[state] ?? []));
    }
    return [...seen].sort((a, b) => a - b);
  }
}

/** One state for each set of loose states that words lead to. */
function determined(loose: LooseGraph, start: number, end: number): WordGraph {
  const ids = new Map<string, number>();
  const sets: (readonly number[])[] = [];
  const idOf = (set: readonly number[]): number => {
    const key = set.join(' ');
    const known = ids.get(key);
    if (known !== undefined) return known;
    ids.set(key, sets.length);
    return sets.push(set) - 1;
  };
  idOf(loose.closed([start]));
  const states: WordState[] = [];
  for (let id = 0; id < sets.length; id += 1) {
    const set = sets[id] ?? [];
    const targets = new Map<string, number[]>();
    for (const state of set)
      for (const [word, to] of loose.words[state] ?? []) targets.set(word, [...(targets.get(word) ?? []), ...to]);
    const next = new Map([...targets].map(([word, to]) => [word, idOf(loose.closed(to))]));
    states.push({ isEnd: set.includes(end), next });
  }
  return { states };
}

/** Puts states together that go on alike (Moore's refinement), and numbers them from the start. */
function smallest({ states }: WordGraph): WordGraph {
  let block: readonly number[] = states.map((state) => (state.isEnd ? 1 : 0));
  for (let count = 0; ; ) {
    const ids = new Map<string, number>();
    const refined = states.map((state, index) => {
      const exits = [...state.next].map(([word, to]) => `${word} ${block[to]}`).sort();
      const key = `${block[index]}|${exits.join('|')}`;
      const id = ids.get(key) ?? ids.size;
      ids.set(key, id);
      return id;
    });
    block = refined;
    if (ids.size === count) break;
    count = ids.size;
  }
  const kept: WordState[] = [];
  for (const [index, state] of states.entries()) {
    const id = block[index] ?? 0;
    kept[id] ??= { isEnd: state.isEnd, next: new Map([...state.next].map(([word, to]) => [word, block[to] ?? 0])) };
  }
  return { states: kept };
}
