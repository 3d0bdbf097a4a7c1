import type { UnitName } from '../fastening/quantity';
import { UNIT_NAMES } from '../fastening/unit';
import { mend } from '../mend';
import { readDocumentWords } from './document-words';
import type { Field } from './field';
import type { Forms, FractionWords, NumberWords, Pair, Scale, SpeechWords } from './speech-words';
import { TERMS } from './terms';

/** The sections of a file of replies that this reads. */
export const WORD_SECTIONS = [
  'numbers',
  'fractions',
  'figures',
  'units',
  'durations',
  'clock',
  'lists',
  'bolts',
  'none',
  'breath',
  'documents',
  'terms',
] as const;

/** Reads everything but the replies themselves. Issues are collected by the field; stand-ins fill what is missing. */
export function readSpeechWords(file: Field): SpeechWords {
  const figures = file.key('figures').only(['range', 'tolerance']);
  const durations = file.key('durations').only(['between', 'none']);
  const clock = file.key('clock').only(['full', 'half']);
  const lists = file.key('lists').only(['between', 'last', 'empty']);
  const units = readUnits(file.key('units'));
  return {
    numbers: readNumbers(file.key('numbers')),
    fractions: readFractions(file.key('fractions')),
    figures: {
      range: templateOf(figures.key('range'), ['from', 'to']),
      tolerance: templateOf(figures.key('tolerance'), ['value', 'by']),
    },
    units,
    durations: { between: durations.key('between').text(), none: durations.key('none').text() },
    clock: { full: forms(clock.key('full'), ['hour']), half: forms(clock.key('half'), ['hour']) },
    lists: {
      between: lists.key('between').text(),
      last: lists.key('last').text(),
      empty: lists.key('empty').text(),
    },
    bolts: readBolts(file.key('bolts')),
    none: file.key('none').text(),
    breath: file.key('breath').texts(),
    documents: readDocumentWords(file.key('documents'), units),
    terms: readTerms(file.key('terms')),
  };
}

function readNumbers(numbers: Field): NumberWords {
  numbers.only(['below-hundred', 'scales', 'digits', 'point', 'minus', 'point-sign', 'thousands-sign', 'singular']);
  const singular = numbers.key('singular').text();
  if (singular !== 'one' && singular !== 'below-two')
    numbers.key('singular').blame('wrong-type', mend('singular'), singular);
  return {
    belowHundred: exactly(numbers.key('below-hundred'), 100),
    scales: numbers
      .key('scales')
      .items()
      .map(readScale)
      .sort((a, b) => b.worth - a.worth),
    digits: exactly(numbers.key('digits'), 10),
    point: numbers.key('point').text(),
    minus: numbers.key('minus').text(),
    pointSign: numbers.key('point-sign').text(),
    thousandsSign: numbers.key('thousands-sign').text(),
    singular: singular === 'below-two' ? 'below-two' : 'one',
  };
}

function readScale(scale: Field): Scale {
  scale.only(['worth', 'one', 'many', 'joint', 'small-joint']);
  const worth = scale.key('worth').number();
  if (worth < 100) scale.key('worth').blame('wrong-count', mend('scale'));
  const joint = scale.key('joint').text();
  return {
    worth: Math.max(100, worth),
    one: scale.key('one').text(),
    many: templateOf(scale.key('many'), ['n']),
    joint,
    smallJoint: scale.has('small-joint') ? scale.key('small-joint').text() : joint,
  };
}

function exactly(list: Field, count: number): readonly string[] {
  const texts = list.texts();
  if (texts.length !== count) list.blame('wrong-count', mend('so-many-words', String(count)), String(texts.length));
  return texts;
}

function readFractions(fractions: Field): FractionWords {
  fractions.only(['bottoms', 'part', 'other', 'mixed']);
  const bottoms = fractions.key('bottoms');
  for (const bottom of bottoms.keys())
    if (!/^[1-9]\d*$/.test(bottom)) bottoms.key(bottom).blame('unknown-key', mend('by-number'), bottom);
  return {
    bottoms: new Map(bottoms.keys().map((bottom) => [Number(bottom), forms(bottoms.key(bottom))])),
    part: templateOf(fractions.key('part'), ['top', 'bottom']),
    other: templateOf(fractions.key('other'), ['top', 'bottom']),
    mixed: templateOf(fractions.key('mixed'), ['whole', 'part']),
  };
}

function readUnits(units: Field): Readonly<Record<UnitName, Forms>> {
  units.only(UNIT_NAMES);
  const read = UNIT_NAMES.map((name) => [name, forms(units.key(name))] as const);
  // fromEntries forgets which keys there are; UNIT_NAMES holds every one.
  return Object.fromEntries(read) as Record<UnitName, Forms>;
}

function readTerms(terms: Field): SpeechWords['terms'] {
  terms.only(TERMS);
  // fromEntries forgets which keys there are; TERMS holds every one.
  return Object.fromEntries(TERMS.map((term) => [term, terms.key(term).text()])) as SpeechWords['terms'];
}

function readBolts(bolts: Field): SpeechWords['bolts'] {
  bolts.only(['one', 'many', 'run']);
  return {
    one: templateOf(bolts.key('one'), ['list']),
    many: templateOf(bolts.key('many'), ['list']),
    run: pair(bolts.key('run'), ['first', 'last']),
  };
}

/** `{one, many}`, or one text for both; with slots where it is a template. */
function forms(field: Field, slots: readonly string[] = []): Forms {
  const read = (one: Field): string => (slots.length > 0 ? templateOf(one, slots) : one.text());
  if (field.isText) return { one: read(field), many: read(field) };
  field.only(['one', 'many']);
  return { one: read(field.key('one')), many: read(field.key('many')) };
}

function pair(field: Field, slots: readonly string[]): Pair {
  field.only(['say', 'show']);
  return { say: templateOf(field.key('say'), slots), show: templateOf(field.key('show'), slots) };
}

/** A short template with each of these places. */
function templateOf(field: Field, slots: readonly string[]): string {
  const text = field.text();
  for (const slot of slots)
    if (text !== '' && !text.includes(`{${slot}}`)) field.blame('unused-slot', mend('put-in', slot));
  return text;
}
