import { numberPhrase, type Phrased } from './quantity-words';
import { put, type SpeechWords } from './speech-words';

/** "one, two and three". */
export function joined(items: readonly Phrased[], words: SpeechWords): Phrased {
  return { spoken: join(items.map((i) => i.spoken)), shown: join(items.map((i) => i.shown)) };

  function join(texts: readonly string[]): string {
    const { between, last, empty } = words.lists;
    const [final, ...before] = [...texts].reverse();
    if (final === undefined) return empty;
    return before.length === 0 ? final : before.reverse().join(between) + last + final;
  }
}

/** Bolts in the order given, runs of three and more drawn together: "bolts one through six, nine and ten". */
export function boltsPhrase(numbers: readonly number[], words: SpeechWords): Phrased {
  if (numbers.length === 0) return { spoken: '', shown: '' };
  const list = joined(
    runsOf(numbers).map((run) => runPhrase(run, words)),
    words,
  );
  const template = numbers.length === 1 ? words.bolts.one : words.bolts.many;
  return { spoken: put(template, { list: list.spoken }), shown: put(template, { list: list.shown }) };
}

function runPhrase(run: readonly number[], words: SpeechWords): Phrased {
  const first = numberPhrase(run[0] ?? 0, words);
  if (run.length === 1) return first;
  const last = numberPhrase(run.at(-1) ?? 0, words);
  const { say, show } = words.bolts.run;
  return {
    spoken: put(say, { first: first.spoken, last: last.spoken }),
    shown: put(show, { first: first.shown, last: last.shown }),
  };
}

/** Rising runs of three or more stay together; everything else stands alone. */
function runsOf(numbers: readonly number[]): readonly (readonly number[])[] {
  const runs: number[][] = [];
  for (const n of numbers) {
    const run = runs.at(-1);
    if (run && run.at(-1) === n - 1) run.push(n);
    else runs.push([n]);
  }
  return runs.flatMap((run) => (run.length >= 3 ? [run] : run.map((n) => [n])));
}
