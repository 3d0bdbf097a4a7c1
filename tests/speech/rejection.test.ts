import { describe, expect, test } from 'vitest';
import { type Evidence, judge as judgeBy, type Verdict } from '../../src/speech/ear/rejection';
import { TUNING } from '../../src/speech/ear/tuning';

const { bars, veto } = TUNING;

const judge = (evidence: Evidence): Verdict => judgeBy(evidence, TUNING);

const good: Evidence = {
  manner: 'progress',
  wordCount: 3,
  cost: 20,
  worstWord: 30,
  overLoop: bars.critical.overLoop - 40,
  frames: 40,
  framesPerPhone: 8,
  longestWord: 50,
  snrDb: 30,
  voice: 0.9,
};

test('a well-heard command passes with a high score', () => {
  expect(judge(good)).toMatchObject({ accepted: true });
  expect(judge(good).score).toBeGreaterThan(0.7);
});

describe('one bad measure is enough to refuse', () => {
  test.each<[string, Partial<Evidence>, string]>([
    ['a cost over the bar', { cost: bars.progress.cost + 1 }, 'score'],
    ['one word that does not fit', { worstWord: bars.progress.worstWord + 1 }, 'score'],
    ['a phone loop that fits far better', { overLoop: bars.progress.overLoop + 1 }, 'score'],
    ['too little time for the phones', { framesPerPhone: veto.leastFramesPerPhone - 1 }, 'too-short'],
    ['a word drawn out absurdly', { longestWord: veto.longestWord + 1 }, 'too-long'],
    ['no louder than the room', { snrDb: veto.leastSnrDb - 1 }, 'too-quiet'],
  ])('%s', (_, flaw, why) => {
    expect(judge({ ...good, ...flaw })).toMatchObject({ accepted: false, why });
    expect(judge({ ...good, ...flaw }).score).toBeLessThanOrEqual(0.5);
  });
});

test('stop is exempt from level and duration, and passes where progress would not', () => {
  const poor = { ...good, wordCount: 1, cost: bars.progress.cost + 5, snrDb: 0, framesPerPhone: 1, longestWord: 400 };
  expect(judge({ ...poor, manner: 'stop' })).toMatchObject({ accepted: true });
  expect(judge(poor)).toMatchObject({ accepted: false });
});

test('the bars tighten from stop to critical', () => {
  const costs = [bars.stop, bars.harmless, bars.progress, bars.critical].map(({ cost }) => cost);
  expect(costs).toEqual([...costs].sort((a, b) => b - a));
});
