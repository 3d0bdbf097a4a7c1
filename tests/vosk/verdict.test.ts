import { describe, expect, test } from 'vitest';
import type { LiveGrammar } from '../../src/core/language/grammar';
import { liveGrammar } from '../../src/core/language/live-grammar';
import type { Said } from '../../src/speech/vosk/frame-messages';
import { judge } from '../../src/speech/vosk/verdict';
import { english, everything, upTo, wellFormed } from '../grammars/en/english';
import { AT_BOLTS, AT_STEP } from './tone-grammar';

type Shape = { readonly conf?: number; readonly seconds?: number; readonly snrDb?: number; readonly torn?: boolean };

function said(words: string, { conf = 1, seconds = 0.3, snrDb = 20, torn = false }: Shape = {}): Said {
  const each = words.split(' ');
  return {
    words: each.map((word, n) => ({ word, conf, start: 1 + n * seconds, end: 1 + (n + 1) * seconds })),
    snrDb,
    torn,
  };
}

const verdict = (live: LiveGrammar, what: Said, revision = live.revision) =>
  judge(live, { said: what, revision, startFrame: 10, endFrame: 20 });

test('a command of the grammar is heard, with its words, its place and how sure it is', () => {
  expect(verdict(AT_BOLTS, said('bolt seven done'))).toEqual({
    type: 'heard',
    revision: 'at-bolts',
    words: 'bolt seven done',
    score: 1,
    startFrame: 10,
    endFrame: 20,
  });
});

describe('what is not exactly one command is never acted on', () => {
  test.each<readonly [name: string, live: LiveGrammar, what: Said, why: string]>([
    ['words mixed across phrases', AT_BOLTS, said('bolt seven step'), 'not-a-command'],
    ['half a command', AT_BOLTS, said('bolt seven'), 'not-a-command'],
    ['a command of another place', AT_BOLTS, said('what torque'), 'not-a-command'],
    ['other speech', AT_STEP, said('[unk]'), 'filler'],
    ['a command inside other speech', AT_STEP, said('[unk] done'), 'filler'],
    ['a command that goes over into other speech', AT_STEP, said('done [unk]'), 'filler'],
    ['one that was already being said as the ear opened', AT_STEP, said('done', { torn: true }), 'stale'],
    ['a hiss', AT_STEP, said('done', { snrDb: 2 }), 'too-quiet'],
    ['a click', AT_STEP, said('done', { seconds: 0.03 }), 'too-short'],
    ['a drone', AT_STEP, said('done', { seconds: 2 }), 'too-long'],
    ['an unsure word', AT_STEP, said('what torque', { conf: 0.4 }), 'score'],
    ['an unsure single word', AT_STEP, said('done', { conf: 0.8 }), 'score'],
  ])('%s', (_name, live, what, why) => {
    expect(verdict(live, what)).toMatchObject({ type: 'rejected', why, revision: live.revision });
  });

  test('two meanings', () => {
    const twice = { ...AT_STEP, commands: AT_STEP.commands.flatMap((c) => [c, { ...c, rule: `${c.rule}-too` }]) };
    expect(verdict(twice, said('done'))).toMatchObject({ type: 'rejected', why: 'ambiguous' });
  });

  test('an answer to an older grammar, though the words mean something now', () => {
    expect(verdict(AT_STEP, said('done'), 'before')).toMatchObject({
      type: 'rejected',
      why: 'stale',
      revision: 'before',
    });
  });
});

test('what the words of a rejection show leaves other speech out', () => {
  expect(verdict(AT_STEP, said('[unk] done [unk]'))).toMatchObject({ words: 'done' });
});

test('stop holds under any revision, half heard, and at a low score, because a missed one is worse than a false one', () => {
  const unsure = said('stop', { conf: 0.4, torn: true, snrDb: 1 });
  expect(verdict(AT_BOLTS, unsure, 'before')).toMatchObject({ type: 'heard', revision: 'at-bolts', words: 'stop' });
  expect(verdict(AT_BOLTS, said('stop', { conf: 0.1 }))).toMatchObject({ type: 'rejected', why: 'score' });
});

test('the shape of a command with a number out of range goes through, to be answered', () => {
  const live = wellFormed(
    liveGrammar(english, [{ rule: 'bolt-done', manner: 'progress', slots: { bolt: upTo(6) } }], 'six'),
  );
  expect(verdict(live, said('bolt nine done'))).toMatchObject({ type: 'heard', words: 'bolt nine done' });
});

test('a critical command wants to be surer than one that only asks', () => {
  const manners = (['harmless', 'progress', 'critical'] as const).map((manner) => {
    const live = { ...everything, commands: everything.commands.map((command) => ({ ...command, manner })) };
    return verdict(live, said('bolt seven done', { conf: 0.8 })).type;
  });
  expect(manners).toEqual(['heard', 'heard', 'rejected']);
});
