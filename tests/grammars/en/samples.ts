import type { Samples } from '../language';

export const SAMPLES: Samples = {
  answers: ['towards the front', 'towards the rear'],
  ends: ['coolant hose', 'cam sensor plug', 'cylinder 2 rag'],
  items: ['coolant hose', 'cam sensor plug'],
  parts: ['thermostat', 'head gasket'],
  wrenches: ['half inch wrench', 'blue wrench'],
  reading: 'reading',
  lone: ['done', 'quiet', 'stop'],
  // "Four" without its r.
  alike: ['two / four'],
  namedByTheReply: [
    'bolt-done bolt: four / two',
    'bolt-done bolt: fourteen / thirteen',
    'bolts-done from: four / two',
    'bolts-done from: fourteen / thirteen',
    'bolts-done to: four / two',
    'bolts-done to: fourteen / thirteen',
    'not-sure bolt: four / two',
    'not-sure bolt: fourteen / thirteen',
    'bolt-replaced bolt: four / two',
    'bolt-replaced bolt: fourteen / thirteen',
    'measured-at place: four / two',
    'measured-at place: fourteen / thirteen',
    'end-closed end: left / right',
    'end-closed end: four / two',
    'so-far degrees',
    'past-by degrees',
    'came-off item: left / right',
    'came-off item: four / two',
  ],
};
