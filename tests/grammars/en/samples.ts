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
};
