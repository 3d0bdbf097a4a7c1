import { expect, test } from 'vitest';
import { fliteForNode } from '../../../src/cli/flite-host';
import { readTongue } from '../../../src/cli/tongue-files';
import { featuresOf } from '../../../src/speech/ear/adapting/cepstra';
import { openEngine } from '../../../src/speech/ear/engine';
import { TUNING } from '../../../src/speech/ear/tuning';
import { samplesOf } from '../sound';
import { MODEL_BASE } from './model';

/** Places in the engine's memory where these figures lie one after another, all but exactly. */
function placesOf(figures: Float32Array, memory: Float32Array): number {
  let found = 0;
  for (let at = 0; at + figures.length <= memory.length; at += 1) {
    let off = 0;
    for (let n = 0; n < figures.length && off < 0.01; n += 1)
      off += Math.abs((memory[at + n] ?? 0) - (figures[n] ?? 0));
    if (off < 0.01) found += 1;
  }
  return found;
}

test('are what the engine itself computes: first, middle and last frame lie in its memory as they are', async () => {
  const engine = await openEngine(MODEL_BASE);
  const { folder } = readTongue('en').model;
  const decoder = new engine.Decoder({ ...TUNING.engine, dither: false, hmm: MODEL_BASE + folder });
  const original = decoder.init_featparams.bind(decoder);
  decoder.init_featparams = async () => {
    await original();
    decoder.set_config('remove_noise', 0);
  };
  decoder.init_feat = async () => engine._decoder_init_feat_s3file(decoder.cdecoder, 0);
  await decoder.initialize();
  const rendered = (await fliteForNode()).render({ text: 'bolt seven done', speaker: 'awb', rate: 1 });
  if (!rendered.ok) throw new Error(rendered.error.detail);
  const sound = samplesOf(rendered.value.wav).map((sample, n) => sample + 1e-4 * ((n % 7) - 3));
  const { data, nfr, nfeat } = decoder.spectrogram(sound);
  const { values } = featuresOf({ frames: nfr, bands: nfeat, values: data }, 13, decoder.get_config('lifter'));
  await decoder.reinitialize_audio();
  const aligner = decoder as unknown as { set_align_text: (text: string) => void };
  aligner.set_align_text('bolt seven done');
  decoder.start();
  decoder.process_audio(sound, false, true);
  decoder.stop();
  const memory = new Float32Array(engine.HEAP32.buffer);
  for (const frame of [0, Math.floor(nfr / 2), nfr - 1])
    expect(placesOf(values.subarray(frame * 39, (frame + 1) * 39), memory)).toBeGreaterThan(0);
}, 60_000);
