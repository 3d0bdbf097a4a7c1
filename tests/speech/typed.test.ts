import { expect, test } from 'vitest';
import type { RecogniserEvent } from '../../src/core/ports';
import { typedRecogniser } from '../../src/speech/typed';
import { listed } from './listed';

test('typed words are heard for certain, tidied, under the revision in force, and even while the voice speaks', () => {
  const recogniser = typedRecogniser();
  const events: RecogniserEvent[] = [];
  recogniser.on((event) => events.push(event));
  recogniser.start();
  recogniser.arm(listed('r7', { 'next step': 'harmless' }));
  recogniser.mute();
  recogniser.type('  Next   STEP ');
  recogniser.type('   ');
  expect(events).toEqual([
    { type: 'ready', msToLoad: 0 },
    { type: 'armed', revision: 'r7' },
    { type: 'heard', revision: 'r7', words: 'next step', score: 1, startFrame: 0, endFrame: 0 },
  ]);
});

test('a listener that left hears nothing more', () => {
  const recogniser = typedRecogniser();
  const events: RecogniserEvent[] = [];
  recogniser.on((event) => events.push(event))();
  recogniser.type('stop');
  expect(events).toEqual([]);
});
