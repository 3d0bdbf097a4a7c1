import { count, replies, reply } from '../../phrasing/reply';
import { asks, type Decision, does, refused } from '../decision';
import { describe } from '../describe';
import type { Entry, EntryBody } from '../entry';
import type { Job } from '../job';
import { passIn, stepIn } from '../plan';

/** What may be taken back by a word. The others need a reasoned correction, or make no sense to undo. */
const UNDOABLE: ReadonlySet<Entry['kind']> = new Set([
  'step-done',
  'step-skipped',
  'setting-confirmed',
  'heads-marked',
  'bolt-done',
  'bolt-turned',
  'torque-read',
  'bolt-fault',
  'order-broken',
  'pass-waited',
  'measured',
  'end-opened',
  'end-closed',
  'listed',
  'timer-started',
  'adapter-on',
  'adapter-off',
  'wrench-dropped',
]);

const BARRIER: ReadonlySet<Entry['kind']> = new Set([
  'question-answered',
  'order-accepted',
  'handed-over',
  'closed',
  'bolt-proved',
  'swing-proved',
  'bolt-settled',
  'bolt-replaced',
  'all-slackened',
  'pass-repeated',
]);

/**
 * Takes back the newest live piece of work, and says what it was. Read-backs, sign-offs and hand-overs stand:
 * nothing before them is reached. Taking back an angle leaves the bolt UNKNOWN until it is said whether it was turned; a doubt
 * that was only said goes with its word.
 */
export function takeBack(job: Job): Decision {
  for (const entry of [...job.entries].reverse()) {
    if (job.undone.has(entry.seq)) continue;
    if (BARRIER.has(entry.kind) || isSignedOff(entry) || endsReadBack(job, entry))
      return refused(reply('undo-blocked', { what: replies([describe(job.plan, entry)]) }));
    if (entry.kind === 'bolt-unknown') {
      if (entry.why === 'not-sure') return undo(job, entry);
      // A doubt that came from an interruption or a take-back is only lifted by proof.
      return refused(reply('undo-blocked', { what: replies([describe(job.plan, entry)]) }));
    }
    if (UNDOABLE.has(entry.kind)) return undo(job, entry);
  }
  return refused(reply('nothing-to-undo', {}));
}

const isSignedOff = (entry: Entry): boolean => entry.kind === 'end-closed' && entry.how === 'signed-off';

/** A step that a read-back ended stands with it. */
const endsReadBack = (job: Job, entry: Entry): boolean =>
  entry.kind === 'step-done' && stepIn(job.plan, entry.step).step.question !== undefined;

function undo(job: Job, entry: Entry): Decision {
  const targets = together(job, entry);
  const entries: EntryBody[] = targets.map((e) => ({ kind: 'undone', target: e.seq }));
  const named = targets.filter((e) => !FOLLOWS.has(e.kind) && (e.kind !== 'step-done' || targets.length === 1));
  const what = reply('taken-back', {
    what: replies((named.length > 0 ? named : targets).map((e) => describe(job.plan, e))),
  });
  const turns = targets.filter((e) => isTurn(job, e));
  const doubts = [...new Map(turns.map((e) => [e.bolt, { step: e.step, pass: e.pass, bolt: e.bolt }])).values()];
  const [doubt, ...more] = doubts;
  if (!doubt) return does(entries, [what]);
  const unknown = doubts.map((at): EntryBody => ({ kind: 'bolt-unknown', ...at, why: 'taken-back' }));
  // Several at once are not asked about in one breath: each is proved by its own mark.
  if (more.length > 0)
    return does([...entries, ...unknown], [what, reply('bolt-unknown', { bolt: count(doubt.bolt) })]);
  return asks(
    [...entries, ...unknown, { kind: 'asked', question: { kind: 'turned-or-not', ...doubt } }],
    what,
    reply('turned-or-not', { bolt: count(doubt.bolt) }),
  );
}

type Turn = Entry & { readonly kind: 'bolt-done' | 'bolt-turned' | 'bolt-fault' };

/** A report after which a bolt of an angle pass may have been turned, whatever else was wrong with it. */
const isTurn = (job: Job, e: Entry): e is Turn =>
  (e.kind === 'bolt-done' || e.kind === 'bolt-turned' || (e.kind === 'bolt-fault' && e.action !== 'note')) &&
  passIn(job.plan, e.step, e.pass).kind === 'angle';

/** Entries written in one breath are taken back in one breath: the step a last bolt ended, the timer a step started. */
function together(job: Job, newest: Entry): readonly Entry[] {
  const live = job.entries.filter((e) => !job.undone.has(e.seq) && (UNDOABLE.has(e.kind) || e.seq === newest.seq));
  const same = live.filter((e) => e.at === newest.at && e.mono === newest.mono && e.session === newest.session);
  const first = same.findIndex((e) => !FOLLOWS.has(e.kind));
  return (first < 0 ? same : same.slice(first)).toReversed();
}

/** Kinds that only ever follow from another entry of the same moment. */
const FOLLOWS: ReadonlySet<Entry['kind']> = new Set(['timer-started']);
