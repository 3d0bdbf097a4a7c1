import { describe, expect, test } from 'vitest';
import { type Evidence, judge as judgeBy, type Verdict } from '../../src/speech/ear/rejection';
import { TUNING } from '../../src/speech/ear/tuning';

const { bars, oneWord, veto } = TUNING;
const judge = (evidence: Evidence): Verdict => judgeBy(evidence, TUNING);

const good: Evidence = {
  manner: 'progress',
  wordCount: 3,
  hasValue: false,
  cost: 20,
  overLoop: -10,
  voicedFrames: 80,
  framesPerPhone: 8,
  snrDb: 30,
  removedDb: 0,
  voice: 0.9,
  leastWordVoice: 0.6,
  covered: 1,
};

/** Evidence that costs exactly so much. */
const costing = (price: number): Evidence => ({ ...good, cost: 0, overLoop: price });

test('a well-heard command passes with a high score', () => {
  expect(judge(good)).toMatchObject({ accepted: true });
  expect(judge(good).score).toBeGreaterThan(0.9);
});

describe('one flaw is enough to refuse', () => {
  test.each<[string, Partial<Evidence>, string]>([
    ['words that fit the sound badly', { cost: 90 }, 'score'],
    ['a phone loop that fits far better', { overLoop: 40 }, 'score'],
    ['hardly any voice', { voicedFrames: veto.leastVoicedFrames - 1 }, 'too-short'],
    ['too little voice for the phones', { framesPerPhone: veto.leastFramesPerPhone - 1 }, 'too-short'],
    ['voice for many more phones', { framesPerPhone: veto.mostFramesPerPhone + 1 }, 'too-long'],
    ['no louder than the room', { snrDb: veto.leastSnrDb - 1 }, 'too-quiet'],
    ['a sound that is hardly a voice', { voice: veto.leastVoice - 0.05 }, 'score'],
    ['most of the voice outside the words', { covered: veto.leastCovered - 0.1 }, 'score'],
    ['one word laid over the quiet', { leastWordVoice: veto.leastWordVoice - 0.05 }, 'score'],
  ])('%s', (_, flaw, why) => {
    expect(judge({ ...good, ...flaw })).toMatchObject({ accepted: false, why });
    expect(judge({ ...good, ...flaw }).score).toBeLessThanOrEqual(0.5);
  });
});

test('the bar itself passes, a shade beyond it does not', () => {
  expect(judge(costing(bars.progress))).toEqual({ accepted: true, score: 0.5 });
  expect(judge(costing(bars.progress + 0.5))).toMatchObject({ accepted: false });
});

test('one word must be heard better than several', () => {
  const between = { ...costing(bars.progress - oneWord.progress / 2), wordCount: 1 };
  expect(judge(between)).toMatchObject({ accepted: false });
  expect(judge({ ...between, wordCount: 2 })).toMatchObject({ accepted: true });
});

test('deep in noise a command must be heard better, however deep', () => {
  const { fromDb, eachDb, most } = TUNING.inNoise;
  const between = costing(bars.progress - most / 2);
  const deep = fromDb + (0.6 * most) / eachDb;
  expect(judge({ ...between, removedDb: fromDb })).toMatchObject({ accepted: true });
  expect(judge({ ...between, removedDb: deep })).toMatchObject({ accepted: false });
  const deepest = { ...costing(bars.progress - most), removedDb: veto.mostRemovedDb };
  expect(judge(deepest)).toMatchObject({ accepted: true });
  expect(judge({ ...deepest, hasValue: true })).toMatchObject({ accepted: false });
});

test('stop is exempt from level and duration, but must be a voice', () => {
  const poor = { ...costing(bars.stop), wordCount: 1, snrDb: 0, framesPerPhone: 40 };
  expect(judge({ ...poor, manner: 'stop' })).toMatchObject({ accepted: true });
  expect(judge(poor)).toMatchObject({ accepted: false });
  expect(judge({ ...poor, manner: 'stop', voice: 0.2 })).toMatchObject({ accepted: false });
  expect(judge({ ...poor, manner: 'stop', voicedFrames: veto.leastStopFrames - 1 })).toMatchObject({ accepted: false });
});

test('the bars tighten from stop to critical', () => {
  const inOrder = [bars.stop, bars.harmless, bars.progress, bars.critical];
  expect(inOrder).toEqual([...inOrder].sort((a, b) => b - a));
});
