import { expect, test } from 'vitest';
import { earRecogniser } from '../../src/cli/ear-recogniser';
import { readTongue } from '../../src/cli/tongue-files';
import { openWorkshop } from '../../src/cli/workshop';
import { spoken } from './speaker';
import { outcomeOf, readSession } from './spoken-session';

test('the mini session, heard in Node by the ear, grammar and machine of the app', async () => {
  const session = readSession('mini-session');
  const tongue = readTongue('en');
  const ear = await earRecogniser(tongue);
  const opened = await openWorkshop(`procedures/${session.procedure}.yaml`, tongue, ear);
  if (!opened.ok) throw new Error(JSON.stringify(opened.error));
  const desk = opened.value;
  for (const turn of session.turns) {
    const before = desk.snapshot.entries.length;
    await ear.play(await spoken(turn.say ?? turn.radio ?? '', turn.speaker));
    await desk.idle();
    const outcome = outcomeOf(desk.job.plan, desk.snapshot.entries, before);
    if (process.env.VERBOSE)
      console.log(
        turn.say ?? turn.radio,
        '->',
        outcome.command,
        outcome.node,
        JSON.stringify(
          desk.snapshot.entries
            .slice(before)
            .filter((e) => e.kind === 'heard' || e.kind === 'rejected')
            .map((e) => [e.words, e.score, 'why' in e ? e.why : '']),
        ),
      );
    const label = turn.say ?? `radio: ${turn.radio}`;
    expect.soft({ label, command: outcome.command }).toEqual({ label, command: turn.expect.command ?? null });
    if (turn.expect.node) expect.soft({ label, node: outcome.node }).toEqual({ label, node: turn.expect.node });
    if (turn.expect.bolts) expect.soft({ label, bolts: outcome.bolts }).toEqual({ label, bolts: turn.expect.bolts });
    if (turn.radio)
      expect
        .soft(desk.snapshot.entries.slice(before).every((e) => e.kind === 'rejected' || e.kind === 'said'))
        .toBe(true);
  }
}, 120_000);
