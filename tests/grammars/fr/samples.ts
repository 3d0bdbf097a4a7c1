import type { Samples } from '../language';

export const SAMPLES: Samples = {
  answers: ['en haut côté poignée', 'en bas près du mur'],
  ends: ['tuyau de retour', 'prise du capteur', 'chiffon du cylindre 2'],
  items: ['tuyau de retour', 'prise du capteur'],
  parts: ['joint', 'vis'],
  wrenches: ['clé bleue', 'clé longue'],
  reading: 'je relève',
  lone: ['silence', 'stop', 'terminé'],
  // The numbers of French are short, and lose their last sound before another consonant. The echo of the number and
  // taking it back hold these apart; nothing else does.
  alike: [
    'cinq / sept',
    'cinq / six',
    'deux / dix',
    'deux / huit',
    'deux / neuf',
    'huit / dix',
    'six / dix',
    'six / huit',
    'six / sept',
    'un / cinq',
    'un / deux',
    'un / dix',
  ],
  namedByTheReply: [
    'bolt-done bolt: deux / un',
    'bolts-done from: deux / un',
    'bolts-done to: deux / un',
    'not-sure bolt: deux / un',
    'bolt-replaced bolt: deux / un',
    'so-far degrees',
    'past-by degrees',
  ],
};
