import type { Entry, Moment } from './entry';
import type { Timer } from './job';

export const startTimer = (say: string, ms: number, now: Moment): Timer => ({
  say,
  ms,
  elapsedMs: 0,
  session: now.session,
  sinceMono: now.mono,
});

/** Milliseconds still to wait; 0 when over. A moment of another session than the timer's counts nothing on top. */
export function timeLeft(timer: Timer, now: Moment): number {
  const running = now.session === timer.session ? Math.max(0, now.mono - timer.sinceMono) : 0;
  return Math.max(0, timer.ms - timer.elapsedMs - running);
}

/** Carries a timer into a new session: what ran in the old one, plus the wall time between, never less than nothing. */
export function carryOver(timer: Timer, last: Entry, opened: Entry): Timer {
  const ran = last.session === timer.session ? Math.max(0, last.mono - timer.sinceMono) : 0;
  const away = Math.max(0, opened.at - last.at);
  return { ...timer, elapsedMs: timer.elapsedMs + ran + away, session: opened.session, sinceMono: opened.mono };
}
