import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Case, caseNames, type Must, readCase, SESSIONS } from './case';
import { finalOf, Session, type Turn } from './play';

// Rewrites `expect` and `final` of every case. What stands under `must` is written by hand and is checked all the same.
const UPDATE = process.env.CASES_UPDATE === '1';

describe.each(caseNames())('%s', (name) => {
  const recorded = readCase(name);
  const { turns, final } = played(recorded);

  if (UPDATE) record(name, { ...recorded, expect: turns.map(withoutWords), final });
  else
    test('goes as it was recorded', () => {
      expect(turns.map(withoutWords)).toEqual(recorded.expect);
      expect(final).toEqual(recorded.final);
    });

  test.each(recorded.must.map((must) => [label(must), must] as const))('%s', (_, must) => {
    const turn = must.turn === undefined ? turns.at(-1) : turns[must.turn - 1];
    if (!turn) throw new Error(`no turn ${must.turn}`);
    holds(must, turn);
    if (must.bolts) expect(final.bolts).toMatchObject(must.bolts);
    if (must.ends) expect(final.ends).toEqual(must.ends);
  });
});

function played(recorded: Case) {
  const session = new Session(recorded);
  for (const event of recorded.given ?? []) {
    const turn = session.play(event);
    // A case that cannot get to its beginning says nothing about what comes after.
    if (turn.verdict === 'refused') throw new Error(`not taken: ${turn.said} (${turn.heard}, ${turn.replies})`);
  }
  session.begin();
  const turns = recorded.say.map((event) => session.play(event));
  return { turns, final: finalOf(session) };
}

function withoutWords({ said, heard, verdict, replies, node }: Turn) {
  return { said, heard, verdict, replies, node };
}

function holds(must: Must, turn: Turn): void {
  if (must.heard !== undefined) expect(turn.heard).toBe(must.heard);
  if (must.verdict !== undefined) expect(turn.verdict).toBe(must.verdict);
  if (must.node !== undefined) expect(turn.node).toBe(must.node);
  for (const code of must.replies ?? []) expect(turn.replies.split(' ')).toContain(code);
  for (const words of must.says ?? []) expect(turn.spoken).toContain(words);
  for (const words of must.shows ?? []) expect(turn.shown).toContain(words);
}

const label = (must: Must): string =>
  `${must.turn === undefined ? 'at the end' : `turn ${must.turn}`}: ${JSON.stringify({ ...must, turn: undefined })}`;

function record(name: string, all: Case): void {
  const file = `${SESSIONS}/${name}.json`;
  writeFileSync(file, JSON.stringify(all, null, 2));
  execFileSync('node_modules/.bin/biome', ['format', '--write', file], { stdio: 'ignore' });
}
