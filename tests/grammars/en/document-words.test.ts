import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readTongue } from '../../../src/cli/tongue-files';
import { parseLexicon } from '../../../src/core/language/sounds/lexicon';
import { unpronounceable } from '../../../src/core/language/vocabulary';
import { figures, plainWords } from '../../../src/core/language/words';
import { checkProcedure } from '../../../src/core/procedure/check-procedure';
import type { Procedure } from '../../../src/core/procedure/procedure';
import { wellFormed } from './english';

const root = `${import.meta.dirname}/../../..`;
const { lexicon: own, sounds, profile } = readTongue('en');
const dictionary = wellFormed(
  parseLexicon(
    readFileSync(`${root}/node_modules/soundswallower/model/${profile.model}/dict.txt`, 'utf8'),
    sounds.phones,
  ),
);

/** What a person says back of a document: things that come off and go back on, parts, answers, places measured. */
function said(procedure: Procedure): readonly string[] {
  const steps = procedure.phases.flatMap((phase) => phase.steps);
  return [
    ...[...procedure.looseEnds.values()].map(({ say }) => say),
    ...[...procedure.parts.values()].map(({ say }) => say),
    ...steps.flatMap((step) => step.question?.answers.flatMap(({ say }) => say) ?? []),
    ...steps.flatMap((step) => (step.kind === 'measure' ? step.readings.map(({ say }) => say) : [])),
  ];
}

const shipped = readdirSync(`${root}/procedures`).filter((file) => file.endsWith('.yaml'));

test.each(shipped)('every word that must be said of %s can be pronounced', (file) => {
  const texts = said(wellFormed(checkProcedure(readFileSync(`${root}/procedures/${file}`, 'utf8'), file)));
  const words = texts.flatMap(plainWords).filter((word) => figures(word) === undefined);
  expect(unpronounceable(words, [own, dictionary])).toEqual([]);
});
