import { expect, test } from 'vitest';
import { earRecogniser } from '../../src/cli/ear-recogniser';
import { readTongue } from '../../src/cli/tongue-files';
import { openWorkshop } from '../../src/cli/workshop';
import type { Entry } from '../../src/core/job/entry';
import { placeOf } from '../../src/core/job/place';
import { stepIn } from '../../src/core/job/plan';
import { boltState, passState } from '../../src/core/job/tightening';
import { nextWords } from '../browser/next-words';
import { spoken, type TestSpeaker } from '../browser/speaker';

const SPEAKERS: readonly TestSpeaker[] = ['rms', 'kal16'];
const STEP = 'tighten-left';

/** Said again as often as a person would before using the buttons. */
const TRIES = 4;

/** What was reported about bolts, in words a count can be made of. */
const reports = (entries: readonly Entry[]): readonly string[] =>
  entries.flatMap((e) => (e.kind === 'bolt-done' && e.step === STEP ? [`${e.pass} ${e.bolt} ${e.inOrder}`] : []));

// The road of "npm run hear": recordings into the ear, the grammar, the machine and the log of the app.
test('one whole bank, all passes and every bolt, is tightened from speech without a hand on it', async () => {
  const tongue = readTongue('en');
  const ear = await earRecogniser(tongue);
  let ms = 0;
  const clock = { wall: () => 1_800_000_000_000 + ms, mono: () => ms };
  const opened = await openWorkshop('procedures/tarnbeck-head-slice.yaml', tongue, ear, clock);
  if (!opened.ok) throw new Error(JSON.stringify(opened.error));
  const desk = opened.value;
  let said = 0;
  let missed = 0;
  let again = 0;
  while (!desk.job.steps.has(STEP)) {
    const words = nextWords(desk.job);
    if (words === null || again >= TRIES) throw new Error(`stuck at ${JSON.stringify(placeOf(desk.job))}: ${words}`);
    const before = desk.job;
    const sound = await spoken(words, SPEAKERS[said % SPEAKERS.length]);
    ms += Math.round((sound.samples.length / sound.rateHz + 1.6) * 1000);
    await ear.play(sound);
    await desk.idle();
    said += 1;
    again = desk.job === before ? again + 1 : 0;
    if (again > 0) missed += 1;
  }
  const { passes } = stepIn(desk.job.plan, STEP);
  const states = desk.job.tightening.get(STEP);
  for (const pass of passes)
    for (const bolt of pass.order)
      expect(states && boltState(passState(states, pass.id), bolt)).toMatchObject({ kind: 'done', inOrder: true });
  // Each bolt of each pass once, in the order of the document: nothing was reported that was not said.
  expect(reports(desk.snapshot.entries)).toEqual(passes.flatMap((p) => p.order.map((bolt) => `${p.id} ${bolt} true`)));
  console.log(`one bank: ${said} sentences, ${missed} of them said again`);
  desk.close();
}, 900_000);
