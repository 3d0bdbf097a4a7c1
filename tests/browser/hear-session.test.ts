import { expect, test } from 'vitest';
import { hearSession, readSession } from './spoken-session';

test('the mini session, heard in Node by the ear, grammar and machine of the app', async () => {
  const session = readSession('mini-session');
  const outcomes = await hearSession(session);
  session.turns.forEach((turn, i) => {
    const outcome = outcomes[i];
    const label = turn.say ?? `radio: ${turn.radio}`;
    if (process.env.VERBOSE) console.log(label, '->', outcome?.command, outcome?.node, outcome?.replies.join(' | '));
    expect.soft({ label, command: outcome?.command }).toEqual({ label, command: turn.expect.command ?? null });
    if (turn.expect.node) expect.soft({ label, node: outcome?.node }).toEqual({ label, node: turn.expect.node });
    if (turn.expect.bolts) expect.soft({ label, bolts: outcome?.bolts }).toEqual({ label, bolts: turn.expect.bolts });
  });
}, 120_000);
