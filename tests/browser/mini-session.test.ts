import { writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import type { BrowserContext } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Bay } from './bay';
import { chromiumPath, ONCE_MORE, openContext } from './chromium';
import { openSite } from './site';
import { inRoom, spoken } from './speaker';
import { hearSession, type Outcome, outcomeOf, planOfSession, readSession } from './spoken-session';
import { stir, stirred, watchStillness } from './stillness';

const session = readSession('mini-session');

/** Heard once, for what is expected of it and for what the browser must agree with. */
let heard: Promise<readonly Outcome[]> | undefined;
const inNode = (): Promise<readonly Outcome[]> => {
  heard ??= hearSession(session);
  return heard;
};

function expectAsWritten(outcomes: readonly Outcome[]): void {
  session.turns.forEach(({ say, radio, expect: wanted }, i) => {
    const { command, node, bolts } = outcomes[i] ?? {};
    const label = say ?? `radio: ${radio}`;
    expect.soft({ label, command }).toEqual({ label, command: wanted.command ?? null });
    if (wanted.node) expect.soft({ label, node }).toEqual({ label, node: wanted.node });
    if (wanted.bolts) expect.soft({ label, bolts }).toEqual({ label, bolts: wanted.bolts });
  });
}

test('the mini session, heard in Node by the ear, grammar and machine of the app', async () => {
  expectAsWritten(await inNode());
});

describe.skipIf(!chromiumPath)('a session by voice in Chromium', ONCE_MORE, () => {
  let site: Awaited<ReturnType<typeof openSite>>;
  let context: BrowserContext;

  beforeAll(async () => {
    site = await openSite();
  });
  afterAll(async () => {
    await context?.close();
    await site?.close();
  });

  test('a short file through the real fake microphone is heard and answered', async () => {
    const wav = `${tmpdir()}/wrenchside-fake-microphone.wav`;
    const rate = 16_000;
    const say = await spoken('this step is done', 'rms');
    // The capture begins with the microphone, so the words come round again until the app is ready for them.
    writeFileSync(wav, inRoom([5, say, 4, say, 4, say, 4, say, 4, say, 4, say, 4, say, 4, say, 4], rate));
    context = await openContext({ microphone: wav });
    const bay = new Bay(await context.newPage());
    await bay.answerBriefly();
    await bay.open(site.address);
    await bay.begin('Practice plate');
    const first = await bay.place();
    await bay.page.waitForFunction((place) => document.getElementById('app')?.dataset.place !== place, first, {
      timeout: 60_000,
    });
    const entries = await bay.log();
    expect(entries.some((e) => e.kind === 'heard' && e.by === 'voice' && e.command === 'done')).toBe(true);
    expect(bay.troubles).toEqual([]);
    await context.close();
  }, 120_000);

  test('a whole mini session, clip by clip, does what the same clips do in Node', async () => {
    const plan = planOfSession(session);
    context = await openContext();
    const bay = new Bay(await context.newPage());
    await bay.wireMicrophone();
    await bay.tapReplies();
    await watchStillness(bay.page);
    await bay.open(site.address);
    await bay.begin('Left head gasket');
    const seen: Outcome[] = [];
    for (const turn of session.turns) {
      const before = (await bay.log()).length;
      await bay.say(turn.say ?? turn.radio ?? '', turn.speaker);
      seen.push(outcomeOf(plan, await bay.log(), before));
      // What blocks closing lies over the Bench until the next command, and then it is gone without a hand.
      const isListed = (await bay.page.getByRole('dialog').count()) > 0;
      if (turn.expect.command)
        expect.soft({ turn, isListed }).toEqual({ turn, isListed: turn.say === 'close the job' });
    }
    expectAsWritten(seen);
    const told = (outcomes: readonly Outcome[]) => outcomes.map((o) => ({ ...o, replies: o.replies.join(' ') }));
    expect(told(seen)).toEqual(told(await inNode()));

    // The screen shows what the log says.
    expect(await bay.page.textContent('.bench-pass')).toContain('Pass 2 of 4');
    // Something was really said: as long as speech, and not silence.
    const replies = await bay.repliesHeard();
    expect(replies.seconds).toBeGreaterThan(5);
    expect(replies.peak).toBeGreaterThan(0.05);
    // Nothing moved while it listened, heard, spoke and was spoken to, but for a new step or a question.
    expect(await stirred(bay.page)).toEqual([]);
    await stir(bay.page);
    // Nothing left the machine.
    expect(bay.requests.filter((url) => !url.startsWith(site.address) && !url.startsWith('blob:'))).toEqual([]);
    expect(bay.troubles).toEqual([]);
  }, 900_000);
});
