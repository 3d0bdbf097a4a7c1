import type { WordGraph } from '../../core/language/word-graph';
import { fail, ok, type Result } from '../../core/result';
import type { Engine, EngineDecoder } from './engine';

/**
 * A loop of bare phones and noises beside the commands, which wins where the sound is no command. `entry` is the natural log of
 * what entering it costs against a command, `each` of what every phone costs.
 */
export type Filler = { readonly entry: number; readonly each: number };

export type SearchGraph = {
  /** Null searches for nothing but the filler. */
  readonly commands: WordGraph | null;
  readonly decoys: readonly string[];
  readonly filler: Filler | null;
};

/** The engine counts likelihoods in powers of this. */
const LOG_BASE = 1.0001;
const inEngineUnits = (naturalLog: number): number => Math.round(naturalLog / Math.log(LOG_BASE));

type Arc = { readonly from: number; readonly to: number; readonly word: string; readonly cost: number };

/**
 * Gives the engine its search graph word for word. Its own way, JSGF text, copies every rule at every mention, which
 * made a full bench grammar fifteen times larger and too slow to listen with, and it spreads weights over alternatives.
 */
export function setSearchGraph(
  engine: Engine,
  decoder: EngineDecoder,
  search: SearchGraph,
  loopWords: readonly string[],
  knows: (word: string) => boolean,
): Result<void, string> {
  const { arcs, states, ends } = arcsOf(search, loopWords);
  const unknown = [...new Set(arcs.map(({ word }) => word))].filter((word) => !knows(word));
  if (unknown.length > 0) return fail(`words without a pronunciation: ${unknown.join(', ')}`);

  const final = states;
  const fsg = withText(engine, 'ear', (name) =>
    engine._fsg_model_init(name, engine._decoder_logmath(decoder.cdecoder), decoder.get_config('lw'), states + 1),
  );
  const ids = new Map<string, number>();
  for (const { from, to, word, cost } of arcs) {
    const id = ids.get(word) ?? withText(engine, word, (text) => engine._fsg_model_word_add(fsg, text));
    ids.set(word, id);
    engine._fsg_model_trans_add(fsg, from, to, cost, id);
  }
  for (const end of ends) engine._fsg_model_null_trans_add(fsg, end, final, 0);
  engine._fsg_set_states(fsg, 0, final);
  return engine._decoder_set_fsg(decoder.cdecoder, fsg) < 0
    ? fail('the engine refused the search graph')
    : ok(undefined);
}

function arcsOf(
  { commands, decoys, filler }: SearchGraph,
  loopWords: readonly string[],
): { arcs: readonly Arc[]; states: number; ends: number[] } {
  const graph = commands?.states ?? [{ isEnd: false, next: new Map<string, number>() }];
  const arcs: Arc[] = graph.flatMap(({ next }, from) => [...next].map(([word, to]) => ({ from, to, word, cost: 0 })));
  const ends = graph.flatMap(({ isEnd }, state) => (isEnd ? [state] : []));
  let states = graph.length;
  for (const decoy of decoys) {
    let from = 0;
    for (const word of decoy.split(' ')) {
      arcs.push({ from, to: states, word, cost: 0 });
      from = states;
      states += 1;
    }
    ends.push(from);
  }
  if (filler) {
    const loop = states;
    const each = inEngineUnits(filler.each);
    for (const word of loopWords) {
      arcs.push({ from: 0, to: loop, word, cost: inEngineUnits(filler.entry) + each });
      arcs.push({ from: loop, to: loop, word, cost: each });
    }
    ends.push(loop);
    states += 1;
  }
  return { arcs, states, ends };
}

/** The engine's memory holds the text while `use` runs. Its dictionaries are UTF-8. */
function withText<T>(engine: Engine, text: string, use: (at: number) => T): T {
  const bytes = Uint8Array.from([...utf8(text), 0]);
  const at = engine._malloc(bytes.length);
  engine.HEAPU8.set(bytes, at);
  const result = use(at);
  engine._free(at);
  return result;
}

/** The language itself has no other encoder, and this folder knows no host's. */
const utf8 = (text: string): readonly number[] =>
  (encodeURIComponent(text).match(/%..|./g) ?? []).map((byte) =>
    byte.length === 1 ? byte.charCodeAt(0) : Number.parseInt(byte.slice(1), 16),
  );
