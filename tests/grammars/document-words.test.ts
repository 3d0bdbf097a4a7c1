import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { checkDocument } from '../../src/cli/check-document';
import { unpronounceable } from '../../src/core/language/vocabulary';
import { figures, plainWords } from '../../src/core/language/words';
import type { Procedure } from '../../src/core/procedure/procedure';
import { everyLanguage, wellFormed } from './language';

const folder = `${import.meta.dirname}/../../procedures`;
const every = new Map((await everyLanguage()).map((language) => [language.code, language]));

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

const shipped = readdirSync(folder)
  .filter((file) => file.endsWith('.yaml'))
  .map((file) => ({ file, procedure: wellFormed(checkDocument(readFileSync(`${folder}/${file}`, 'utf8'), file)) }));

test.each(shipped)('every word that must be said of $file can be pronounced in its language', ({ procedure }) => {
  const words = said(procedure)
    .flatMap(plainWords)
    .filter((word) => figures(word) === undefined);
  expect(words.length).toBeGreaterThan(0);
  expect(unpronounceable(words, every.get(procedure.language)?.lexicons ?? [])).toEqual([]);
});

test.each([...every.values()])('the tour of $code is held on a shipped document in that language', ({ tongue }) => {
  const { code, tour } = tongue.profile;
  expect(shipped.find(({ procedure }) => procedure.id === tour)?.procedure.language).toBe(code);
});
