import { describe, expect, test } from 'vitest';
import { SoundChecks } from '../../src/shell/setup/sound-checks';
import { SharedEar } from '../../src/shell/sound/shared-ear';
import { FakeEar, grammar, HandClock } from './fakes';

function checks() {
  const real = new FakeEar();
  const clock = new HandClock();
  const ear = new SharedEar(real);
  const made = new SoundChecks({ ear, after: clock.after, grammar: () => grammar('check'), changed: () => undefined });
  return { real, clock, checks: made };
}

describe('the microphone check', () => {
  test('ends with the words it heard', () => {
    const { real, checks: c } = checks();
    c.checkMicrophone();
    real.heard('loan/1', "what's next");
    expect(c.microphone).toEqual({ state: 'heard', words: "what's next" });
  });

  test.each([
    { what: 'nothing but a level that never rises', levels: [-70, -69, -70], state: 'silent' },
    { what: 'a voice without words', levels: [-70, -40, -38], state: 'unclear' },
  ])('$what is $state', ({ levels, state }) => {
    const { real, clock, checks: c } = checks();
    c.checkMicrophone();
    for (const db of levels) real.level(db);
    clock.pass(10_000);
    expect(c.microphone).toEqual({ state });
  });

  test('says that the browser refuses', () => {
    const { real, checks: c } = checks();
    c.checkMicrophone();
    real.tell({ type: 'failed', code: 'microphone-refused', detail: '' });
    expect(c.microphone).toEqual({ state: 'refused' });
  });
});

describe('the noise check', () => {
  test.each([
    { db: -60, state: 'quiet' },
    { db: -35, state: 'loud' },
    { db: -20, state: 'too-loud' },
  ])('$db dB most of the time is $state', ({ db, state }) => {
    const { real, clock, checks: c } = checks();
    c.checkNoise();
    real.level(-5);
    for (let i = 0; i < 9; i++) real.level(db);
    clock.pass(5000);
    expect(c.noise).toEqual({ state, db });
  });

  test('no level at all is no verdict', () => {
    const { clock, checks: c } = checks();
    c.checkNoise();
    clock.pass(20_000);
    expect(c.noise).toEqual({ state: 'unchecked' });
  });

  test('a second check takes the ear from the first, which then hears nothing more', () => {
    const { real, checks: c } = checks();
    c.checkMicrophone();
    c.checkNoise();
    real.heard('loan/1');
    real.heard('loan/2');
    expect(c.microphone.state).toBe('checking');
  });
});
