import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Rendering, Utterance } from '../../src/voice/flite/flite';
import type { FromVoiceWorker, ToVoiceWorker } from '../../src/voice/flite/messages';
import { Renderer } from '../../src/voice/renderer';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

type Behaviour = 'well' | 'not-found' | 'crashes-at-work' | 'dead';

const RENDERING: Rendering = { wav: new Uint8Array(44), ms: 0 };
const say = (text: string): Utterance => ({ text, speaker: 'slt', rate: 1 });

/** A bench of workers: the nth one started behaves as the nth behaviour says, the last one for all after it. */
function bench(...behaviours: readonly [Behaviour, ...Behaviour[]]) {
  const started: Behaviour[] = [];
  const rendered: string[] = [];
  const events: string[] = [];
  const renderer = new Renderer(
    (hear, died) => {
      const behaviour = behaviours[Math.min(started.length, behaviours.length - 1)] ?? 'well';
      started.push(behaviour);
      const answer = (message: FromVoiceWorker) => setTimeout(() => hear(message), 10);
      let alive = true;
      const post = (message: ToVoiceWorker) => {
        if (!alive) return;
        if (message.type === 'load' && behaviour === 'not-found') {
          answer({ type: 'load-failed', code: 'voice-not-found', detail: '404' });
        } else if (message.type === 'load') answer({ type: 'ready', msToLoad: 10 });
        else if (message.type === 'ping' && behaviour !== 'dead') answer({ type: 'pong' });
        else if (message.type === 'render' && behaviour === 'crashes-at-work') setTimeout(() => died('boom'), 10);
        else if (message.type === 'render' && behaviour === 'well') {
          rendered.push(message.utterance.text);
          answer({ type: 'rendered', id: message.id, rendering: RENDERING });
        }
      };
      return {
        post,
        terminate: () => {
          alive = false;
        },
      };
    },
    'flite.wasm',
    (event) => events.push(event.type),
  );
  return { renderer, started, rendered, events };
}

test('nothing is loaded until something is wanted', async () => {
  const { renderer, started } = bench('well');
  await vi.advanceTimersByTimeAsync(10_000);
  expect(started).toEqual([]);
  renderer.start();
  expect(started).toEqual(['well']);
});

describe('order', () => {
  test('what is wanted now goes before what may be wanted next', async () => {
    const { renderer, rendered } = bench('well');
    for (const text of ['first', 'second', 'third']) void renderer.render(say(text), 'ahead');
    void renderer.render(say('now'), 'now');
    void renderer.render(say('third'), 'now');
    await vi.advanceTimersByTimeAsync(200);
    expect(rendered).toEqual(['third', 'now', 'first', 'second']);
  });

  test('the same words asked twice are rendered once and given to both', async () => {
    const { renderer, rendered } = bench('well');
    const both = Promise.all([renderer.render(say('seven'), 'ahead'), renderer.render(say('seven'), 'now')]);
    await vi.advanceTimersByTimeAsync(200);
    expect(await both).toEqual([
      { ok: true, value: RENDERING },
      { ok: true, value: RENDERING },
    ]);
    expect(rendered).toEqual(['seven']);
  });

  test('a new guess at the next replies takes the place of the old one', async () => {
    const { renderer, rendered } = bench('well');
    for (const text of ['old one', 'old two']) void renderer.render(say(text), 'ahead');
    renderer.forgetAhead();
    void renderer.render(say('new'), 'ahead');
    await vi.advanceTimersByTimeAsync(200);
    expect(rendered).toEqual(['new']);
  });
});

describe('a worker that dies', () => {
  test('at work is replaced and the sentence is rendered after all', async () => {
    const { renderer, started } = bench('crashes-at-work', 'well');
    const result = renderer.render(say('seven'), 'now');
    await vi.advanceTimersByTimeAsync(1000);
    expect(await result).toEqual({ ok: true, value: RENDERING });
    expect(started).toEqual(['crashes-at-work', 'well']);
  });

  test('without a word is missed by its pulse and replaced', async () => {
    const { renderer, started } = bench('dead', 'well');
    const result = renderer.render(say('seven'), 'now');
    await vi.advanceTimersByTimeAsync(7000);
    expect(await result).toEqual({ ok: true, value: RENDERING });
    expect(started).toEqual(['dead', 'well']);
  });

  test('twice over the same words gives those up, not the voice', async () => {
    const { renderer, events } = bench('crashes-at-work', 'crashes-at-work', 'well');
    const bad = renderer.render(say('bad'), 'now');
    await vi.advanceTimersByTimeAsync(1000);
    const good = renderer.render(say('good'), 'now');
    await vi.advanceTimersByTimeAsync(1000);
    expect(await bad).toMatchObject({ ok: false, error: { code: 'voice-crashed' } });
    expect(await good).toMatchObject({ ok: true });
    expect(events).not.toContain('failed');
  });

  test('again and again is let rest, and what is asked meanwhile fails at once', async () => {
    const { renderer, started, events } = bench('not-found');
    const first = renderer.render(say('seven'), 'now');
    await vi.advanceTimersByTimeAsync(30_000);
    expect(started).toHaveLength(5);
    expect(events).toEqual(['failed']);
    expect(await first).toMatchObject({ ok: false, error: { code: 'voice-missing' } });
    expect(await renderer.render(say('eight'), 'now')).toMatchObject({ ok: false, error: { code: 'voice-missing' } });
    expect(started).toHaveLength(5);
  });

  test('is tried again after the rest, when something is asked', async () => {
    const { renderer, started } = bench('not-found', 'not-found', 'not-found', 'not-found', 'not-found', 'well');
    void renderer.render(say('seven'), 'now');
    await vi.advanceTimersByTimeAsync(120_000);
    expect(started).toHaveLength(5);
    const later = renderer.render(say('eight'), 'now');
    await vi.advanceTimersByTimeAsync(100);
    expect(await later).toEqual({ ok: true, value: RENDERING });
  });
});

test('a reply that takes too long is given up, so that the next is not kept waiting', async () => {
  const { renderer } = bench('dead');
  const result = renderer.render(say('seven'), 'now');
  await vi.advanceTimersByTimeAsync(8000);
  expect(await result).toMatchObject({ ok: false });
});

test('closing answers everyone who still waits and starts nothing more', async () => {
  const { renderer, started } = bench('crashes-at-work');
  const result = renderer.render(say('seven'), 'now');
  renderer.close();
  await vi.advanceTimersByTimeAsync(10_000);
  expect(await result).toMatchObject({ ok: false });
  expect(started).toHaveLength(1);
});
