import type { Entry } from '../job/entry';
import { assertNever } from '../result';
import { standing } from './standing';

/** Something out of the ordinary. `told` has nothing to close: it was done on purpose, or put right in the telling. */
export type ExceptionRecord = {
  readonly entry: Entry;
  readonly ending: 'open' | 'closed' | 'told';
  readonly closedBy: Entry | null;
};

/** All that was out of the ordinary, in order, each with the entry that closed it. What was taken back is told as that. */
export function exceptionsOf(entries: readonly Entry[]): readonly ExceptionRecord[] {
  const live = standing(entries);
  return live.flatMap((entry, index): readonly ExceptionRecord[] => {
    const sort = sortOf(entry);
    if (sort === null) return [];
    if (sort === 'told') return [{ entry, ending: 'told', closedBy: null }];
    const closedBy = live.slice(index + 1).find((later) => closes(entry, later)) ?? null;
    return [{ entry, ending: closedBy ? 'closed' : 'open', closedBy }];
  });
}

function sortOf(entry: Entry): 'to-close' | 'told' | null {
  switch (entry.kind) {
    case 'bolt-fault':
      return entry.action === 'note' || entry.action === 'accept' ? 'told' : 'to-close';
    case 'bolt-done':
      return entry.inOrder ? null : 'to-close';
    case 'bolt-replaced':
      return entry.action === 'accept' ? 'told' : 'to-close';
    case 'bolt-unknown':
    case 'order-broken':
    case 'step-skipped':
      return 'to-close';
    case 'question-answered':
      return entry.right ? null : 'to-close';
    case 'measured':
      return entry.within === false ? 'to-close' : null;
    case 'end-opened':
      return entry.why === 'dropped' ? 'to-close' : null;
    case 'end-closed':
      return entry.how === 'signed-off' ? 'told' : null;
    case 'order-accepted':
      return entry.override ? 'told' : null;
    case 'pass-repeated':
    case 'all-slackened':
    case 'wrench-dropped':
    case 'adapter-on':
    case 'undone':
      return 'told';
    case 'job-started':
    case 'session-opened':
    case 'handed-over':
    case 'closed':
    case 'paused':
    case 'came-back':
    case 'wrench-chosen':
    case 'wrenches-owned':
    case 'time-given':
    case 'terse-set':
    case 'step-done':
    case 'setting-confirmed':
    case 'heads-marked':
    case 'torque-read':
    case 'bolt-turned':
    case 'bolt-proved':
    case 'swing-proved':
    case 'bolt-settled':
    case 'marks-read':
    case 'pass-waited':
    case 'timer-started':
    case 'asked':
    case 'question-dropped':
    case 'adapter-off':
    case 'listed':
    case 'checked-by':
    case 'noted':
    case 'pictured':
    case 'heard':
    case 'rejected':
    case 'said':
      return null;
    default:
      return assertNever(entry);
  }
}

function closes(open: Entry, later: Entry): boolean {
  switch (open.kind) {
    case 'bolt-fault':
    case 'bolt-unknown':
    case 'bolt-replaced':
      return settlesBolt(open, later);
    case 'bolt-done':
    case 'order-broken':
      return later.kind === 'order-accepted' ? isSamePass(open, later) : startsAgain(open, later);
    case 'step-skipped':
      return (
        (later.kind === 'end-closed' && later.end === open.step) ||
        (later.kind === 'step-done' && later.step === open.step)
      );
    case 'question-answered':
      return later.kind === 'question-answered' && later.step === open.step && later.right;
    case 'measured':
      return (
        later.kind === 'measured' &&
        later.step === open.step &&
        later.reading === open.reading &&
        later.within !== false
      );
    case 'end-opened':
      return later.kind === 'end-closed' && later.end === open.end;
    default:
      return false;
  }
}

type InPass = { readonly step: string; readonly pass: string };

const isSamePass = (one: InPass, other: InPass): boolean => one.step === other.step && one.pass === other.pass;

/** The whole pass or tightening was begun again, and with it whatever was wrong in it. */
const startsAgain = (at: InPass, later: Entry): boolean =>
  (later.kind === 'pass-repeated' && isSamePass(at, later)) ||
  (later.kind === 'all-slackened' && later.step === at.step);

function settlesBolt(at: InPass & { readonly bolt: number }, later: Entry): boolean {
  if (startsAgain(at, later)) return true;
  const settles = later.kind === 'bolt-done' || later.kind === 'bolt-proved' || later.kind === 'bolt-replaced';
  return settles && isSamePass(at, later) && later.bolt === at.bolt;
}
