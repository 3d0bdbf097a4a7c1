import { describe, expect, test } from 'vitest';
import { placesOf } from '../../src/cli/authoring/places';
import { commonRules, phraseLines } from '../../src/cli/phrases';
import { main } from '../../src/cli/procedure';
import { EXIT } from '../../src/cli/procedure/check';
import { readTongue } from '../../src/cli/tongue-files';
import { commandOf, MANNERS } from '../../src/core/job/command';
import { shipped } from '../core/job/workbench';
import { broken, SOUND } from '../core/procedure/sound-document';
import { recordedIo } from './recorded-io';

const FILES = { 'sound.yaml': SOUND, 'broken.yaml': broken('tool: bar', 'tool: barr') };

async function run(...argv: readonly string[]) {
  const recorded = recordedIo(FILES);
  return { ...recorded, code: await main(argv, recorded.io) };
}

describe('the exit code', () => {
  test.each([
    ['a sound document', ['check', 'sound.yaml'], EXIT.fine],
    ['a broken one', ['check', 'broken.yaml'], EXIT.broken],
    ['a card of a broken one', ['card', 'broken.yaml'], EXIT.broken],
    ['a chart of a file that is not there', ['chart', 'gone.yaml'], EXIT.misused],
    ['no command', [], EXIT.misused],
    ['a command that is not there', ['crad', 'sound.yaml'], EXIT.misused],
    ['a switch that is not there', ['card', '--pdf', 'sound.yaml'], EXIT.misused],
    ['a word too many', ['chart', 'sound.yaml', 'more'], EXIT.misused],
    ['a pattern that is not there', ['draw', 'sound.yaml', 'lit'], EXIT.misused],
    ['a step that is not there', ['explain', 'sound.yaml', 'tightenn'], EXIT.misused],
    ['a call for help', ['--help'], EXIT.fine],
    ['help about one command', ['new', '--help'], EXIT.fine],
    ['a card', ['card', 'sound.yaml'], EXIT.fine],
    ['a page', ['card', '--html', 'sound.yaml'], EXIT.fine],
    ['a drawing', ['draw', 'sound.yaml', 'lid'], EXIT.fine],
    ['a chart', ['chart', 'sound.yaml'], EXIT.fine],
    ['an explanation', ['explain', 'sound.yaml', 'lay'], EXIT.fine],
    ['phrases', ['phrases', 'sound.yaml'], EXIT.fine],
    ['phrases as the script calls them', ['phrases', '--procedure', 'sound.yaml', '--lines'], EXIT.fine],
  ])('of %s', async (_name, argv, code) => {
    const { code: given, printed, complaints } = await run(...argv);
    expect(given).toBe(code);
    // What was asked for is printed; where nothing can be, the reason is told, and never both.
    if (argv[0] !== 'check') expect(printed.length > 0).toBe(complaints.length === 0);
  });

  test('a broken document is told with file, line and column, and nothing is printed', async () => {
    const { complaints, printed } = await run('card', 'broken.yaml');
    expect(complaints[0]).toMatch(/^broken\.yaml:\d+:\d+ error unknown-tool /);
    expect(printed).toEqual([]);
  });

  test('what is not there is told with what is', async () => {
    expect((await run('draw', 'sound.yaml', 'lit')).complaints).toEqual(['There is no pattern "lit". There are: lid.']);
  });

  test('the help names every command', async () => {
    const { printed } = await run('--help');
    for (const name of ['check', 'new', 'card', 'rehearse', 'phrases', 'draw', 'chart', 'explain'])
      expect(printed.join('\n')).toMatch(new RegExp(`^ {2}${name} `, 'm'));
  });
});

describe('explained', () => {
  const about = async (step: string): Promise<string> => (await run('explain', 'sound.yaml', step)).printed.join('\n');

  test.each([
    [
      'what is spoken, and after a wrong answer',
      'lay',
      /Spoken:\n {2}.*Lay the seal\.[\s\S]*after a wrong answer: Turn it over\./,
    ],
    ['the answers that can be given', 'lay', /answer +progress +"it reads [a-z ]+"/],
    ['the answer that is waited for', 'lay', /Blocked until:\n {2}it is answered: "bright face"/],
    ['the timer it starts', 'lay', /Starts:\n {2}cure, 30 min/],
    ['what it opens, and what that blocks', 'off-left', /Opens:\n {2}left hose, which blocks crank/],
    ['what it closes', 'hoses-on', /Closes:\n {2}left hose, which blocks crank\n {2}right hose/],
    ['the wait it needs', 'turn-over', /the wait is over: cure, 30 min/],
    ['the milestone and what stands before it', 'turn-over', /the milestone crank[\s\S]*left hose/],
    ['the branch it is in', 'oil', /"look" has been answered wet; otherwise it is left out/],
    [
      'each part of each pass',
      'tighten',
      /low\.set:[\s\S]*turn\.mark:[\s\S]*Can be said at build\.tighten\.turn\.work/,
    ],
  ])('%s', async (_name, step, words) => expect(await about(step)).toMatch(words));
});

describe('phrases, line by line', () => {
  const lines = [...phraseLines(shipped('practice-plate'), readTongue('en'))].map((line) => line.split('\t'));

  test('are place, what happened, rule, manner, sentence', () => {
    for (const [node = '', , rule = '', manner, sentence, ...more] of lines) {
      expect(node).toMatch(/^[a-z.-]+$/);
      expect(commandOf(rule, {})).toBeDefined();
      expect(manner).toBe(Object.entries(MANNERS).find(([name]) => name === rule)?.[1]);
      expect(sentence).toMatch(/^[a-z' ]+$/);
      expect(more).toEqual([]);
    }
  });

  test.each([
    ['a pass being set', 'tighten.tighten-plate.first.set', 'set-at'],
    ['heads being marked', 'tighten.tighten-plate.turn.mark', 'all-marked'],
    ['an angle being turned', 'tighten.tighten-plate.turn.work', 'so-far'],
    ['a hold point', 'ready.corner', 'answer'],
    ['work out of order', 'tighten.tighten-plate.first.sort', 'go-ahead-anyway'],
    ['a break', 'paused', 'im-back'],
    ['the end', 'closing', 'close-job'],
  ])('%s has its own command', (_name, node, rule) => {
    expect(lines.some((line) => line[0] === node && line[2] === rule)).toBe(true);
  });

  test('"stop" can be said in every place', () => {
    const places = placesOf(shipped('practice-plate'));
    expect(places.filter(({ offers }) => !offers.some(({ rule }) => rule === 'stop'))).toEqual([]);
    expect(commonRules(places)).toContain('stop');
  });
});
