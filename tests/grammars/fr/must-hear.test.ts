import { describe, expect, test } from 'vitest';
import type { SlotValue } from '../../../src/core/language/grammar';
import { languageUnderTest } from '../language';
import { SAMPLES } from './samples';

const { book, hear } = languageUnderTest('fr', SAMPLES);

const integer = (value: number): SlotValue => ({ kind: 'integer', value });
const reading = (value: number, unit: string | null = null): SlotValue => ({ kind: 'reading', value, unit });
const option = (id: string): SlotValue => ({ kind: 'option', id });

/** Sentences that must be understood, with everything live at once. Twin of must-not-hear. */
const MUST: readonly (readonly [words: string, rule: string, slots?: Readonly<Record<string, SlotValue>>])[] = [
  ['stop', 'stop'],
  ['silence', 'stop'],
  ['arrête de parler', 'stop'],
  ['quelle est la suite', 'tell-next'],
  ['étape suivante', 'tell-next'],
  ['répète encore', 'say-again'],
  ["répète s'il te plaît", 'say-again'],
  ['quel couple de serrage', 'tell-torque'],
  ['quelles clés conviennent', 'tell-wrenches'],
  ['change pour la clé bleue', 'use-wrench', { wrench: option('clé-bleue') }],
  ['utilise la petite clé', 'use-size', { size: option('small') }],
  ["je prends l'autre clé", 'use-size', { size: option('other') }],
  ['quelles précautions', 'tell-caution'],
  ['où en suis je', 'tell-place'],
  ['combien il en reste', 'tell-remaining'],
  ["qu'est ce qui reste ouvert", 'tell-loose-ends'],
  ["est ce que j'ai fait le boulon neuf", 'tell-bolt', { bolt: integer(9) }],
  ['où en est le boulon deux', 'tell-bolt', { bolt: integer(2) }],
  ['lis moi toute la passe', 'tell-pass'],
  ['quels mots maintenant', 'tell-words'],
  ['fais moi le point', 'tell-brief'],
  ['combien de temps encore', 'tell-timers'],
  ['huilé ou à sec', 'tell-lubrication'],
  ['quelle douille', 'tell-tool'],
  ['quelle longueur dans le trou sept', 'tell-length', { bolt: integer(7) }],
  ['devant ou derrière', 'tell-side'],
  ['en livres pieds', 'tell-in-unit', { unit: option('lbf·ft') }],
  ['combien ça fait en newtons mètres', 'tell-in-unit', { unit: option('N·m') }],
  ['quel réglage avec une rallonge de deux pouces', 'tell-setting', { length: reading(2, 'in') }],
  [
    'quel réglage avec deux pouces à quatre vingt dix degrés',
    'tell-setting',
    { length: reading(2, 'in'), degrees: integer(90) },
  ],
  ['quelle est la limite', 'tell-limit'],
  ['encore combien de degrés', 'tell-angle-left'],
  ['lis moi la liste', 'tell-list'],
  ['combien de temps ça prend', 'tell-time-needed'],
  ['fais le calcul', 'tell-sum'],
  ["combien de temps j'ai travaillé", 'tell-worked'],
  ['jusqu’où protège cinquante pour cent', 'tell-freezing', { share: reading(50, '%') }],
  ['quel mélange pour moins trente cinq', 'tell-mix', { cold: reading(35) }],
  ['combien de concentré pour deux virgule cinq litres', 'tell-concentrate', { room: reading(2.5, 'L') }],
  [
    'combien de concentré à trente pour cent pour quatre litres',
    'tell-concentrate',
    { share: reading(30, '%'), room: reading(4, 'L') },
  ],
  [
    'estime le couple pour m dix classe dix point neuf',
    'tell-estimate',
    { thread: option('M10'), grade: option('class 10.9') },
  ],
  [
    'quel couple irait pour trois huitièmes gros filet grade huit à soixante dix pour cent',
    'tell-estimate',
    { thread: option('3/8-16'), grade: option('grade 8'), share: reading(70, '%') },
  ],
  [
    "quelle charge d'épreuve pour m dix pas de un virgule vingt cinq classe huit point huit",
    'tell-proof',
    { thread: option('M10x1.25'), grade: option('class 8.8') },
  ],
  [
    'quelle tension donne quarante newtons mètres sur m huit',
    'tell-tension',
    { thread: option('M8'), setting: reading(40, 'N·m') },
  ],
  ['quelle tension ça donne', 'tell-pull'],
  ["de combien ça l'allonge", 'tell-stretch'],
  ['seulement les chiffres', 'terse'],
  ['dis tout en entier', 'full'],
  ['parle plus lentement', 'slower'],
  ['parle plus vite', 'faster'],
  ['terminé', 'done'],
  ["c'est fait", 'done'],
  ['cette étape est terminée', 'done'],
  ['la clé a déclenché', 'clicked'],
  ['boulon sept terminé', 'bolt-done', { bolt: integer(7) }],
  ['boulon un zéro terminé', 'bolt-done', { bolt: integer(10) }],
  ['terminé pour le boulon trois', 'bolt-done', { bolt: integer(3) }],
  ['boulons un à six terminés', 'bolts-done', { from: integer(1), to: integer(6) }],
  ["quarante cinq jusqu'ici", 'so-far', { degrees: integer(45) }],
  ["cent trente cinq degrés jusqu'ici", 'so-far', { degrees: integer(135) }],
  ['toutes les têtes sont marquées', 'all-marked'],
  ['réglée à quarante', 'set-at', { setting: reading(40) }],
  ['réglée à quarante newtons mètres', 'set-at', { setting: reading(40, 'N·m') }],
  ['clé réglée à quatre cinq virgule deux', 'set-at', { setting: reading(45.2) }],
  ['je vois en haut côté poignée', 'answer', { answer: option('en-haut-côté-poignée') }],
  ['je relève un six cinq', 'measured', { reading: reading(165) }],
  ['je relève cent soixante cinq p s i', 'measured', { reading: reading(165, 'psi') }],
  ['numéro trois donne un six cinq', 'measured-at', { place: integer(3), reading: reading(165) }],
  ['le tuyau de retour est de nouveau en place', 'end-closed', { end: option('tuyau-de-retour') }],
  ["j'ai remis en place chiffon du cylindre deux", 'end-closed', { end: option('chiffon-du-cylindre-2') }],
  ["j'ai débranché la prise du capteur", 'came-off', { item: option('prise-du-capteur') }],
  ["j'en ai fait tomber un", 'dropped-one'],
  ["je l'ai retrouvé", 'found-it'],
  ['annule la dernière', 'take-back'],
  ['non annule la dernière', 'take-back'],
  ['attends une minute', 'hold-on'],
  ['me revoilà', 'im-back'],
  ['lance le minuteur', 'start-timer'],
  ['enregistre une note', 'take-note'],
  ['prends une photo', 'take-picture'],
  ['mets un joint sur la liste', 'add-to-list', { part: option('joint') }],
  ["j'arrête pour ce soir", 'knocking-off'],
  ['contrôlé par robin', 'checked-by', { person: option('robin') }],
  ["n'écoute plus maintenant", 'ears-off'],
  ['écoute moi de nouveau', 'ears-on'],
  ["j'ai assez de temps", 'have-time'],
  ['pas le temps maintenant', 'no-time'],
  ['commence la passe suivante', 'next-pass-ready'],
  ['déclic venu trop tôt', 'clicked-early'],
  ['il est resté mou', 'felt-soft'],
  ['je suis allé trop loin', 'went-past'],
  ['dépassé de cinq degrés', 'past-by', { degrees: integer(5) }],
  ['le boulon a cassé', 'snapped'],
  ['je les ai faits dans le désordre', 'out-of-order'],
  ["pas sûr d'avoir fait le boulon six", 'not-sure', { bolt: integer(6) }],
  ["j'ai tiré après le déclic", 'pulled-through'],
  ['deux déclics de suite', 'clicked-twice'],
  ["j'ai fait tomber la clé", 'dropped-wrench'],
  ['le repère est à trois heures', 'mark-at', { clock: integer(3) }],
  ['repère à une heure', 'mark-at', { clock: integer(1) }],
  ['aucun repère visible', 'no-mark'],
  ['nouveau boulon au trou six', 'bolt-replaced', { bolt: integer(6) }],
  ["saute cette étape pour l'instant", 'skip-step'],
  [
    "je passe sur le tuyau de retour en attente d'une pièce",
    'sign-off',
    { end: option('tuyau-de-retour'), reason: option('waiting-for-a-part') },
  ],
  ['continue malgré tout', 'go-ahead-anyway'],
  ['recommence cette passe', 'repeat-pass'],
  ['desserre les tous', 'slacken-all'],
  ['rallonge montée deux pouces', 'adapter-on', { length: reading(2, 'in') }],
  ['rallonge montée deux et demi pouces', 'adapter-on', { length: reading(2.5, 'in') }],
  ['rallonge enlevée', 'adapter-off'],
  ["d'accord je confirme", 'confirm'],
  ['laisse tomber ça', 'cancel'],
  ['ce boulon a tourné', 'turned'],
  ["rien n'a bougé du tout", 'not-turned'],
  ['clôture le travail', 'close-job'],
  ['transmets le travail', 'hand-over'],
  ["montre moi l'établi", 'show-bench'],
  ['montre le journal', 'show-record'],
  ['montre moi les travaux', 'show-jobs'],
  ['montre les procédures', 'show-procedures'],
  ['montre les réglages', 'show-setup'],
  ['montre moi la fiche de travail', 'show-card'],
  ['on reprend le travail', 'carry-on'],
  ['commence la procédure deux', 'begin-procedure', { line: integer(2) }],
  ['ouvre le travail trois', 'open-job', { line: integer(3) }],
  ['fais moi faire la visite', 'show-around'],
];

test.each(MUST.map(([words, rule, slots = {}]) => ({ words, rule, slots })))(
  '"$words" is $rule',
  ({ words, rule, slots }) => {
    expect(hear(words)).toEqual({ kind: 'command', rule, manner: 'progress', slots });
  },
);

test('every command has a sentence here', () => {
  expect([...new Set(MUST.map(([, rule]) => rule))].sort()).toEqual([...book.publicRules].sort());
});

describe('typed words mean the same as spoken ones', () => {
  test.each([
    ['Boulon 7 terminé.', 'boulon sept terminé'],
    ['Où en suis-je ?', 'où en suis je'],
    ['Est-ce que j’ai fait le boulon 9 ?', "est ce que j'ai fait le boulon neuf"],
    ['réglée à 45,2 newtons-mètres', 'réglée à quatre cinq virgule deux newtons mètres'],
    ['je relève 165', 'je relève un six cinq'],
    ['  ÉTAPE   SUIVANTE ', 'étape suivante'],
  ])('%s', (typed, spoken) => {
    expect(hear(typed)).toEqual(hear(spoken));
    expect(hear(typed).kind).not.toBe('nothing');
  });
});

describe('numbers', () => {
  test.each<readonly [words: string, value: number]>([
    ['soixante dix', 70],
    ['septante', 70],
    ['soixante et onze', 71],
    ['septante et un', 71],
    ['quarante et un', 41],
    ['soixante dix neuf', 79],
    ['quatre vingt', 80],
    ['quatre vingts', 80],
    ['huitante', 80],
    ['octante', 80],
    ['quatre vingt un', 81],
    ['quatre vingt dix', 90],
    ['nonante', 90],
    ['quatre vingt onze', 91],
    ['nonante et un', 91],
    ['quatre vingt dix neuf', 99],
    ['nonante neuf', 99],
    ['cent', 100],
    ['cent un', 101],
    ['cent soixante quinze', 175],
    ['cent quatre vingt dix neuf', 199],
    ['deux cents', 200],
    ['trois cent quatre vingt', 380],
    ['neuf cent nonante neuf', 999],
    ['vingt et un', 21],
    ['vingt quatre', 24],
    ['dix sept', 17],
    ['un six cinq', 165],
    ['un zéro cinq', 105],
    ['deux et demi', 2.5],
    ['quatre vingt virgule quatre', 80.4],
    ['dix virgule cinq', 10.5],
  ])('%s is %d', (words, value) => {
    expect(hear(`réglée à ${words}`)).toMatchObject({ kind: 'command', slots: { setting: reading(value) } });
  });

  test.each<readonly [words: string, value: number]>([
    ['zéro virgule vingt cinq', 0.25],
    ['deux virgule zéro cinq', 2.05],
    ['trois virgule soixante quinze', 3.75],
    ['un virgule quatre vingt dix', 1.9],
  ])('decimals said as a number: %s is %d', (words, value) => {
    expect(hear(`rallonge montée ${words} pouces`)).toMatchObject({
      kind: 'command',
      slots: { length: reading(value, 'in') },
    });
  });
});
