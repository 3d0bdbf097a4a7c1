import { planOf } from '../core/job/plan';
import type { Procedure } from '../core/procedure/procedure';
import type { Tongue } from '../core/tongue';
import { leavesOf, nodesOf } from '../machine/nodes';
import { placesOf, type ReachedPlace } from './authoring/places';
import { type Sayable, sayableAt } from './authoring/sayable';
import { EXIT } from './procedure/check';
import { type ProcedureIo, terminalIo } from './procedure/io';
import { withTongue } from './procedure/read';
import { isRunDirectly } from './procedure/run-directly';

export const PHRASES_USAGE =
  'phrases FILE [--lines]   what can be said in each place; --lines for a tab-separated list';

/**
 * Prints what can be said at every place of a procedure. Commands that can be said wherever work goes on are told once,
 * at the top. With `--lines` each is a line of its own: place, what happened, rule, manner, sentence.
 */
export const phrases = (argv: readonly string[], io: ProcedureIo): Promise<number> => {
  const words = argv.filter((word) => word !== '--lines' && word !== '--procedure');
  return withTongue(words, 1, PHRASES_USAGE, io, (procedure, tongue) => {
    const report = argv.includes('--lines') ? phraseLines : phraseReport;
    for (const line of report(procedure, tongue)) io.print(line);
    const lost = notReached(procedure);
    if (lost.length > 0) io.complain(`No way was found to: ${lost.join(', ')}. Rehearse the job up to there.`);
    return EXIT.fine;
  });
};

export function* phraseLines(procedure: Procedure, tongue: Tongue): Generator<string> {
  for (const place of placesOf(procedure))
    for (const { rule, manner, examples } of sayableAt(place, tongue))
      for (const example of examples) yield [place.node, place.after, rule, manner, example].join('\t');
}

export function* phraseReport(procedure: Procedure, tongue: Tongue): Generator<string> {
  const places = placesOf(procedure).map((place) => ({ place, sayable: sayableAt(place, tongue) }));
  const common = commonRules(places.map(({ place }) => place));
  const first = places.find(({ place }) => isWorking(place));
  yield `${procedure.title}: ${places.length} places`;
  yield '';
  yield 'Wherever work goes on';
  yield* (first?.sayable ?? []).filter(({ rule }) => common.has(rule)).map(sayableLine);
  for (const { place, sayable } of places) {
    yield '';
    yield headOf(place);
    const own = sayable.filter(({ rule }) => !isWorking(place) || !common.has(rule));
    yield* own.map(sayableLine);
  }
}

/** States that the walk did not come to. The checker should have found the reason; where it did not, this tells. */
function notReached(procedure: Procedure): readonly string[] {
  const seen = new Set(placesOf(procedure).map(({ node }) => node));
  return leavesOf(nodesOf(planOf(procedure)))
    .map(({ id }) => id)
    .filter((id) => !seen.has(id));
}

const isWorking = ({ node, asking }: ReachedPlace): boolean =>
  asking === null && node !== 'paused' && node !== 'closed';

/** The commands that can be said wherever work goes on. */
export function commonRules(places: readonly ReachedPlace[]): ReadonlySet<string> {
  const [first, ...others] = places.filter(isWorking).map(({ offers }) => new Set(offers.map(({ rule }) => rule)));
  return new Set([...(first ?? [])].filter((rule) => others.every((rules) => rules.has(rule))));
}

export const headOf = ({ node, after, asking }: ReachedPlace): string =>
  [node, ...(after === '' ? [] : [`after: ${after}`]), ...(asking === null ? [] : [`asking: ${asking}`])].join(', ');

export const sayableLine = ({ rule, manner, examples }: Sayable): string =>
  `  ${rule.padEnd(16)} ${manner.padEnd(9)} ${examples.map((words) => `"${words}"`).join(', ')}`;

if (isRunDirectly(import.meta.url)) process.exitCode = await phrases(process.argv.slice(2), terminalIo());
