import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { placesOf, type ReachedPlace } from '../../../src/cli/authoring/places';
import { grammarAt } from '../../../src/cli/authoring/sayable';
import { planOf } from '../../../src/core/job/plan';
import { type Confusion, confusionFinder } from '../../../src/core/language/sounds/confusability';
import { liveVocabulary, unpronounceable } from '../../../src/core/language/vocabulary';
import { leavesOf, nodesOf } from '../../../src/machine/nodes';
import { shipped } from '../../core/job/workbench';
import { everyLanguage, type LanguageUnderTest } from '../../grammars/language';

const documents = readdirSync('procedures').flatMap((file) =>
  file.endsWith('.yaml') ? [file.replace('.yaml', '')] : [],
);
const languages = new Map((await everyLanguage()).map((language) => [language.code, language]));

const reached = new Map<string, readonly ReachedPlace[]>(documents.map((name) => [name, placesOf(shipped(name))]));
const placesIn = (document: string): readonly ReachedPlace[] => reached.get(document) ?? [];

const languageOf = (document: string): LanguageUnderTest => {
  const language = languages.get(shipped(document).language);
  if (!language) throw new Error(`${document} is in a language that the program does not speak`);
  return language;
};

/** One place for each set of sentences of a language: what is offered alike sounds alike. */
const grammarsOf = ({ code, tongue }: LanguageUnderTest) => {
  const places = documents.filter((document) => languageOf(document).code === code).flatMap(placesIn);
  return [...new Map(places.map((place) => [JSON.stringify(place.offers), place] as const)).values()].map((place) => ({
    place,
    live: grammarAt(place, tongue),
  }));
};

describe.each(documents)('in %s', (document) => {
  test('every state of the machine is come to', () => {
    const seen = new Set(placesIn(document).map(({ node }) => node));
    const leaves = leavesOf(nodesOf(planOf(shipped(document)))).map(({ id }) => id);
    expect(leaves.filter((id) => !seen.has(id))).toEqual([]);
  });

  test('places come in the order of the job', () => {
    const order = planOf(shipped(document)).order;
    const steps = placesIn(document).flatMap(({ node }) =>
      order.includes(node.split('.')[1] ?? '') ? [node.split('.')[1]] : [],
    );
    const firsts = [...new Set(steps)];
    expect(firsts).toEqual(order.filter((id) => firsts.includes(id)));
    expect(firsts).toHaveLength(order.length);
  });
});

test('over all documents, every question that can be pending is asked somewhere', () => {
  const asked = new Set([...reached.values()].flat().map(({ asking }) => asking));
  expect([...asked].map(String).sort()).toEqual(
    [
      'adapter',
      'close-job',
      'hand-over',
      'held-bolt',
      'mark',
      'marks',
      'null',
      'out-of-order',
      'override-order',
      'reading',
      'repeat-pass',
      'sign-off',
      'skip-step',
      'slacken-all',
      'turned-or-not',
      'which-bolt',
    ].sort(),
  );
});

/** Two values by what tells them apart, so that every left and right of a document is one line here. */
function apart({ a, b }: Confusion): string {
  const [first, second] = [a.words.split(' '), b.words.split(' ')];
  const differing = (one: readonly string[], other: readonly string[]) =>
    one.length === other.length ? one.filter((word, index) => word !== other[index]) : one;
  return [differing(first, second).join(' '), differing(second, first).join(' ')].sort().join(' / ');
}

/** What sounds alike and acts at once, in any place of any shipped procedure of a language, each once. */
function closeIn(language: LanguageUnderTest) {
  const confusionsIn = confusionFinder(language.lexicons, language.sounds);
  const close = new Map<string, { readonly place: ReachedPlace; readonly found: Confusion }>();
  for (const { place, live } of grammarsOf(language))
    for (const found of confusionsIn(live).filter(({ stakes }) => stakes === 'acts')) {
      const what = found.slot === undefined ? `${found.a.rule} or ${found.b.rule}` : `${found.a.rule} ${found.slot}`;
      const key = found.slot === 'degrees' ? what : `${what}: ${apart(found)}`;
      if (!close.has(key)) close.set(key, { place, found });
    }
  return close;
}

describe.each([...languages.values()])('in $code', (language) => {
  const close = closeIn(language);

  test('no two commands that act at once sound alike, in any place of any shipped procedure', () => {
    const between = [...close].filter(([, { found }]) => found.slot === undefined);
    expect(between.map(([key, { place }]) => `${key} at ${place.node}`)).toEqual([]);
  });

  test('values that sound alike are all known, and none is known that no longer does', () => {
    const found = [...close].filter(([, { found }]) => found.slot !== undefined).map(([key]) => key);
    expect(found.sort()).toEqual([...language.samples.namedByTheReply].sort());
  });

  test('every word that can be said in any place has a pronunciation', () => {
    const unknown = new Map<string, string>();
    for (const { place, live } of grammarsOf(language))
      for (const word of unpronounceable(liveVocabulary(live), language.lexicons)) unknown.set(word, place.after);
    expect(Object.fromEntries(unknown)).toEqual({});
  });
});
