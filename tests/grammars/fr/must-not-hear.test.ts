import { describe, expect, test } from 'vitest';
import { languageUnderTest } from '../language';
import { SAMPLES } from './samples';

const { hear } = languageUnderTest('fr', SAMPLES);

/** Talk that must never be a command, with everything live at once. Twin of must-hear. */
test.each<readonly [words: string, why: string]>([
  ['', 'silence'],
  ['bon', 'a sound of agreement'],
  ['oui', 'a sound of agreement'],
  ["d'accord", 'half of the confirming phrase'],
  ['je confirme', 'half of the confirming phrase'],
  ['non', 'might take back, might be talk'],
  ['suivant', 'too short to rest anything on'],
  ['suivante', 'too short to rest anything on'],
  ['arrête', 'said to anybody'],
  ['attends', 'said to anybody'],
  ['serré', 'a condition, not an order'],
  ['desserre', 'half of an order'],
  ['sept terminé', 'boulon sept, or seven bolts'],
  ['sept', 'a number alone'],
  ['cent soixante cinq', 'a number alone'],
  ['boulon sept', 'not reported, only named'],
  ['le boulon sept est fait', 'the end of a question'],
  ["j'ai fait le boulon sept", 'the end of "est ce que j\'ai fait le boulon sept"'],
  ['fait le boulon sept', 'the end of a question'],
  ['boulon neuf', 'bolt nine, or a new bolt'],
  ['boulon neuf au trou six', 'bolt nine, or a new bolt'],
  ['boulons un à six', 'not reported, only named'],
  ['note', 'a note needs its own phrase'],
  ['quarante livres', 'a value without a command'],
  ['pas terminé', 'the opposite of a report'],
  ["ce n'est pas terminé", 'the opposite of a report'],
  ['terminé terminé', 'said twice, might be two bolts'],
  ["ce boulon n'a pas tourné", 'the opposite of turned'],
  ["rien n'a bougé", 'half of the phrase'],
  ["non d'accord je confirme", 'two things'],
  ['laisse tomber', 'half of the phrase, and talk'],
  ['boulon sept terminé boulon huit terminé', 'two things'],
  ['le tuyau de retour', 'a thing, nothing said about it'],
  ['boulon une terminé', 'all but "boulon deux terminé"'],
  ["j'ai enlevé la conduite", 'nothing of this job'],
  ['rallonge montée', 'how long?'],
  ['rallonge de deux pouces', 'the end of a question'],
  ['un soixante cinq', 'a number in pairs'],
  ['réglée à quatre vingt vingt', 'no number'],
  ['réglée à soixante vingt', 'no number'],
  ['what is next', 'another language'],
])('"%s": %s', (words) => {
  expect(hear(words)).toEqual({ kind: 'nothing' });
});

describe('the shape of a command with a value out of place is told apart from talk', () => {
  test.each<readonly [words: string, rule: string, slot: string, given: string]>([
    ['boulon quarante terminé', 'bolt-done', 'bolt', '40'],
    ['boulon quatre vingt onze terminé', 'bolt-done', 'bolt', '91'],
    ['boulons un à quatorze terminés', 'bolts-done', 'to', '14'],
    ["quarante six jusqu'ici", 'so-far', 'degrees', '46'],
    ['le repère est à treize heures', 'mark-at', 'clock', '13'],
    ['je relève deux cent dix', 'measured', 'reading', '210'],
    ['réglée à quarante livres', 'set-at', 'setting', '40 lbf'],
    ['rallonge montée deux', 'adapter-on', 'length', '2'],
    ['en livres pouces', 'tell-in-unit', 'unit', 'lbf·in'],
  ])('"%s": %s, %s, given %s', (words, rule, slot, given) => {
    expect(hear(words)).toEqual({ kind: 'almost', rule, slot, given });
  });
});
