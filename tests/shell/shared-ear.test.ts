import { describe, expect, test } from 'vitest';
import type { RecogniserEvent } from '../../src/core/ports';
import { PushToTalk } from '../../src/shell/sound/push-to-talk';
import { SharedEar } from '../../src/shell/sound/shared-ear';
import { FakeEar, grammar, HandClock } from './fakes';

function desk() {
  const real = new FakeEar();
  const ear = new SharedEar(real);
  const heard: RecogniserEvent[] = [];
  ear.on((event) => heard.push(event));
  ear.start();
  ear.arm(grammar('job'));
  return { real, ear, types: () => heard.map(({ type }) => type), heard };
}

describe('one ear for all', () => {
  test('while it is lent, words go to the borrower alone', () => {
    const { real, ear, types } = desk();
    const lent: RecogniserEvent[] = [];
    ear.borrow(grammar('check'), (event) => lent.push(event));
    real.heard('loan/1', 'what is next');
    expect(lent.map(({ type }) => type)).toEqual(['heard']);
    expect(types()).toEqual([]);
  });

  test('whoever starts later is told at once whether it hears, or why not', () => {
    const { real, ear, heard } = desk();
    real.tell({ type: 'failed', code: 'microphone-refused', detail: '' });
    ear.start();
    expect(heard.map((event) => (event.type === 'failed' ? event.code : event.type))).toEqual([
      'microphone-refused',
      'microphone-refused',
    ]);
    real.tell({ type: 'ready', msToLoad: 1 });
    ear.start();
    expect(heard.slice(2).map(({ type }) => type)).toEqual(['ready', 'ready']);
  });

  test('words of the job that come late reach nobody while it is lent', () => {
    const { real, ear, types } = desk();
    const lent: RecogniserEvent[] = [];
    ear.borrow(grammar('check'), (event) => lent.push(event));
    real.heard('job');
    expect([...types(), ...lent]).toEqual([]);
  });

  test('given back, it listens for the job again and drops what was said to the borrower', () => {
    const { real, ear, types } = desk();
    const giveBack = ear.borrow(grammar('check'), () => undefined);
    giveBack();
    expect(real.asked.at(-1)).toBe('arm job');
    real.heard('loan/1');
    real.heard('job');
    expect(types()).toEqual(['heard']);
  });

  test('a grammar armed meanwhile waits for the ear to be given back', () => {
    const { real, ear } = desk();
    const giveBack = ear.borrow(grammar('check'), () => undefined);
    ear.arm(grammar('job 2'));
    expect(real.asked).not.toContain('arm job 2');
    giveBack();
    expect(real.asked.at(-1)).toBe('arm job 2');
  });

  test('it opens only when nothing keeps it shut', () => {
    const { real, ear } = desk();
    ear.shut('pedal');
    ear.mute();
    ear.unmute();
    expect(real.asked.filter((a) => a.endsWith('mute'))).toEqual(['mute']);
    ear.open('pedal');
    expect(real.asked.at(-1)).toBe('unmute');
  });

  test('a new adapter stands where the last one stood', () => {
    const { real, ear } = desk();
    ear.shut('pedal');
    const next = new FakeEar();
    ear.swap(next);
    expect(real.asked.at(-1)).toBe('close');
    expect(next.asked).toEqual(['arm job', 'mute', 'start']);
  });

  test('whoever begins to listen later is told that it is ready', () => {
    const { real, ear, types } = desk();
    real.tell({ type: 'ready', msToLoad: 5 });
    ear.start();
    expect(types()).toEqual(['ready', 'ready']);
  });
});

describe('push-to-talk', () => {
  function pedal() {
    const { real, ear } = desk();
    const clock = new HandClock();
    let hushed = 0;
    const talk = new PushToTalk(
      ear,
      () => {
        hushed++;
      },
      clock.after,
      () => undefined,
    );
    talk.choose(true);
    return { real, ear, clock, talk, hushed: () => hushed };
  }

  test('the ear is shut until the pedal is down, and stays open a little after it', () => {
    const { ear, clock, talk } = pedal();
    expect(ear.isShutBy('pedal')).toBe(true);
    talk.pedal(true);
    expect(ear.isShutBy('pedal')).toBe(false);
    talk.pedal(false);
    clock.pass(1000);
    expect(ear.isShutBy('pedal')).toBe(false);
    clock.pass(1000);
    expect(ear.isShutBy('pedal')).toBe(true);
  });

  test('a sentence that is understood shuts it at once', () => {
    const { real, ear, talk } = pedal();
    talk.pedal(true);
    talk.pedal(false);
    real.heard('job');
    expect(ear.isShutBy('pedal')).toBe(true);
  });

  test('pressing again before it shuts keeps it open', () => {
    const { ear, clock, talk } = pedal();
    talk.pedal(true);
    talk.pedal(false);
    talk.pedal(true);
    clock.pass(5000);
    expect(ear.isShutBy('pedal')).toBe(false);
  });

  test('pressing cuts what is being said', () => {
    const { talk, hushed } = pedal();
    talk.pedal(true);
    expect(hushed()).toBe(1);
  });

  test('the end of our own sound does not open an ear that waits for the pedal', () => {
    const { real, ear } = pedal();
    ear.mute();
    ear.unmute();
    expect(real.asked).not.toContain('unmute');
  });

  test('listening always, the pedal does nothing', () => {
    const { ear, talk, hushed } = pedal();
    talk.choose(false);
    talk.pedal(true);
    talk.pedal(false);
    expect(ear.isShutBy('pedal')).toBe(false);
    expect(hushed()).toBe(0);
  });
});
