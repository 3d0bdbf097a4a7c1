import { expect, test } from 'vitest';
import { heardClipId } from '../../src/core/log/heard-clip';
import { HeardClips } from '../../src/shell/clips/heard-clips';
import type { OpenJob } from '../../src/shell/job/job-desk';
import { memoryStore } from '../../src/store/memory-store';

const card = { id: 'j', title: '', procedure: '', created: 0, who: '', closed: false };
/** Two bytes a sample, as in a WAV file of them. */
const wav = async (samples: Float32Array) => new Uint8Array(2 * samples.length);

async function bench(hasJob = true) {
  const store = memoryStore();
  if (hasJob) await store.createJob(card);
  let failures = 0;
  const clips = new HeardClips(wav, () => {
    failures += 1;
  });
  const open = { card, store } as OpenJob;
  const keep = (seq: number, seconds: number) =>
    clips.keep(open, { kind: 'heard', seq, at: seq } as never, new Float32Array(16_000 * seconds));
  const stored = async () => {
    const blobs = await store.blobs('j');
    return blobs.ok ? blobs.value : [];
  };
  return { store, clips, keep, stored, failures: () => failures };
}

test('an utterance is kept up to eight seconds of it', async () => {
  const { keep, stored } = await bench();
  await keep(1, 2);
  await keep(2, 60);
  expect((await stored()).map(({ bytes }) => bytes.length)).toEqual([64_000, 256_000]);
});

test('of one job there are never more than twenty megabytes; the oldest go, and nothing else does', async () => {
  const { store, keep, stored } = await bench();
  await store.putBlob('j', { id: 'note', mime: 'audio/webm', bytes: new Uint8Array(5_000_000) });
  for (let seq = 1; seq <= 80; seq += 1) await keep(seq, 8);
  const ids = (await stored()).map(({ id }) => id);
  const at = (seq: number): string => heardClipId({ seq, at: seq });
  // 78 clips of 256,000 bytes are the most that fit.
  expect(ids).toEqual(['note', ...Array.from({ length: 78 }, (_, i) => at(i + 3))]);
});

test('what was kept before this start counts too', async () => {
  const { store, clips } = await bench();
  await store.putBlob('j', { id: heardClipId({ seq: 10, at: 1 }), mime: 'audio/wav', bytes: new Uint8Array(4) });
  await store.putBlob('j', { id: heardClipId({ seq: 9, at: 1 }), mime: 'audio/wav', bytes: new Uint8Array(4) });
  expect([...(await clips.kept(store, 'j')).keys()]).toEqual([9, 10].map((seq) => heardClipId({ seq, at: 1 })));
});

test('a clip that cannot be stored is told of and not taken for kept', async () => {
  const { store, clips, keep, failures } = await bench(false);
  await keep(1, 1);
  expect(failures()).toBe(1);
  expect((await clips.kept(store, 'j')).size).toBe(0);
});
