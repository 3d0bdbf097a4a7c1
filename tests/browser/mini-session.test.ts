import { writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import type { BrowserContext } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Bay } from './bay';
import { chromiumPath, ONCE_MORE, openContext } from './chromium';
import { openSite } from './site';
import { inRoom, spoken } from './speaker';
import { hearSession, type Outcome, outcomeOf, planOfSession, readSession } from './spoken-session';

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
    writeFileSync(wav, inRoom([8, say, 6, say, 6, say, 6, say, 6, say, 6, say, 4], rate));
    context = await openContext({ microphone: wav });
    const bay = new Bay(await context.newPage());
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
    const session = readSession('mini-session');
    const plan = planOfSession(session);
    context = await openContext();
    const bay = new Bay(await context.newPage());
    await bay.wireMicrophone();
    await bay.tapReplies();
    await bay.open(site.address);
    await bay.talkFast();
    await bay.begin('Left head gasket');
    const seen: Outcome[] = [];
    for (const turn of session.turns) {
      const before = (await bay.log()).length;
      await bay.say(turn.say ?? turn.radio ?? '', turn.speaker);
      seen.push(outcomeOf(plan, await bay.log(), before));
    }
    session.turns.forEach((turn, i) => {
      const label = turn.say ?? `radio: ${turn.radio}`;
      const outcome = seen[i];
      expect.soft({ label, command: outcome?.command }).toEqual({ label, command: turn.expect.command ?? null });
      if (turn.expect.node) expect.soft({ label, node: outcome?.node }).toEqual({ label, node: turn.expect.node });
      if (turn.expect.bolts) expect.soft({ label, bolts: outcome?.bolts }).toEqual({ label, bolts: turn.expect.bolts });
    });
    const inNode = await hearSession(session);
    expect(seen.map(({ command, node, bolts }) => ({ command, node, bolts }))).toEqual(
      inNode.map(({ command, node, bolts }) => ({ command, node, bolts })),
    );
    expect(seen.map((s) => s.replies.join(' '))).toEqual(inNode.map((s) => s.replies.join(' ')));

    // The screen shows what the log says.
    expect(await bay.page.textContent('.bench-pass')).toContain('Pass 2 of 4');
    // Something was really said: as long as speech, and not silence.
    const replies = await bay.repliesHeard();
    expect(replies.seconds).toBeGreaterThan(20);
    expect(replies.peak).toBeGreaterThan(0.05);
    // Nothing left the machine.
    expect(bay.requests.filter((url) => !url.startsWith(site.address) && !url.startsWith('blob:'))).toEqual([]);
    expect(bay.troubles).toEqual([]);
  }, 900_000);
});
