import { readFileSync } from 'node:fs';
import type { LiveGrammar } from '../../core/language/grammar';
import { type Sample, samples } from '../../core/language/sample';
import type { Tongue } from '../../core/tongue';
import { placesOf } from '../authoring/places';
import { grammarAt } from '../authoring/sayable';
import { checkDocument } from '../check-document';

/** A sentence, and all that can be said where it is said. */
export type InPlace = { readonly live: LiveGrammar; readonly sample: Sample };

const PROCEDURE = 'procedures/tarnbeck-head-gasket.yaml';
const SENTENCES = 3;

/** Three sentences of every command that the shipped whole job has, each in the first place where the command can be given. */
export function jobCommands(tongue: Tongue): readonly InPlace[] {
  const checked = checkDocument(readFileSync(PROCEDURE, 'utf8'), PROCEDURE);
  if (!checked.ok) throw new Error(JSON.stringify(checked.error));
  const met = new Set<string>();
  return placesOf(checked.value).flatMap((place) => {
    const fresh = place.offers.filter(({ rule }) => !met.has(rule));
    if (fresh.length === 0) return [];
    for (const { rule } of fresh) met.add(rule);
    const live = grammarAt(place, tongue);
    const rules = new Set(fresh.map(({ rule }) => rule));
    return live.commands
      .filter(({ rule }) => rules.has(rule))
      .flatMap((command) => samples({ ...live, commands: [command] }, SENTENCES))
      .map((sample) => ({ live, sample }));
  });
}
