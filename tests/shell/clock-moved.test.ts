import { readFileSync } from 'node:fs';
import { expect, test, vi } from 'vitest';
import { readTongue } from '../../src/cli/tongue-files';
import { planOf } from '../../src/core/job/plan';
import { phaseTimes, workFold } from '../../src/core/record/work-times';
import { beginJob, type DeskHost } from '../../src/shell/job/job-desk';
import { readJob } from '../../src/shell/job/job-log';
import { sha256Hex } from '../../src/store/hash';
import { memoryStore } from '../../src/store/memory-store';
import { silentVoice } from '../../src/voice/silent';
import { FakeEar, HandClock } from './fakes';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const NOON = 1_800_000_000_000;
const file = 'procedures/practice-plate.yaml';

test.each([
  ['back', -5 * HOUR],
  ['forward', 30 * HOUR],
  ['nowhere', 0],
])(
  'a wall clock put %s under a job: the log keeps its order and both times, and work is counted by the other clock',
  async (_, moved) => {
    const hands = new HandClock();
    let offset = 0;
    const clock = { wall: () => NOON + hands.now + offset, mono: () => hands.now };
    const store = memoryStore();
    const host: DeskHost = {
      store,
      hash: sha256Hex,
      clock,
      session: 's',
      newId: () => 'id',
      tongue: readTongue('en'),
      recogniser: new FakeEar(),
      voice: silentVoice(clock, { pace: 'none' }),
      after: hands.after,
      perform: () => undefined,
      settings: () => ({ people: [], wrenches: [], terse: false }),
    };
    const opened = await beginJob(host, { text: readFileSync(file, 'utf8'), file, machine: 'plate', who: 'Robin' });
    if (!opened.ok) throw new Error(opened.error.code);
    const { desk, writer, procedure } = opened.value;
    desk.start([]);
    const say = async (words: string): Promise<void> => {
      hands.pass(10 * MINUTE);
      desk.type(words);
      await desk.idle();
      await vi.waitFor(() => expect(desk.snapshot.talking).toBe(false));
    };
    await say('this step is done');
    offset = moved;
    await say('it reads top on the handle side');
    await say('this step is done');
    desk.close();
    await writer.close();

    const read = await readJob(store, sha256Hex, 'id', 'en');
    if (!read.ok) throw new Error(read.error.code);
    const { entries, damage } = read.value;
    expect(damage).toBeNull();
    expect(entries.map(({ seq }) => seq)).toEqual(entries.map((_e, i) => i + 1));
    const monos = entries.map(({ mono }) => mono);
    expect(monos).toEqual([...monos].sort((a, b) => a - b));
    // Said once, after the answer, and so in the record too.
    expect(entries.flatMap((e) => (e.kind === 'said' && e.code === 'clock-moved' ? [e.at] : []))).toEqual(
      moved === 0 ? [] : [NOON + 20 * MINUTE + moved],
    );
    // The jump stands in the record as it was: neither smoothed over nor put in another order.
    expect(entries.at(-1)?.at).toBe(NOON + 30 * MINUTE + moved);
    const worked = phaseTimes(planOf(procedure), workFold(planOf(procedure))(entries).stretches);
    expect(worked.reduce((sum, { workedMs }) => sum + workedMs, 0)).toBe(30 * MINUTE);
  },
);
