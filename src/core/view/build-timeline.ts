import { type Entry, isTalk } from '../job/entry';
import { type Plan, stepIn } from '../job/plan';
import { assertNever } from '../result';
import type { TimelineLine } from './timeline-line';

/** The spoken-log timeline of a whole job: one plain line an entry, in the order of the log. `textOf` tells what happened. */
export function timelineOf(
  plan: Plan,
  entries: readonly Entry[],
  textOf: (entry: Entry) => string,
): readonly TimelineLine[] {
  const undone = new Set(entries.flatMap((e) => (e.kind === 'undone' ? [e.target] : [])));
  let phase = plan.procedure.phases[0]?.say ?? '';
  let who = '';
  return entries.map((entry, i) => {
    // What was said to a step stands in its phase, under the heading that its first entry brings.
    const next = entries[i + 1];
    const about = entry.kind === 'heard' && next && 'step' in next ? next : entry;
    if ('step' in about) phase = stepIn(plan, about.step).phase.say;
    const isNewHand = who !== '' && entry.who !== who;
    who = entry.who;
    return {
      seq: entry.seq,
      at: entry.at,
      kind: kindOf(entry),
      text: isTalk(entry) ? talkText(entry) : textOf(entry),
      undone: undone.has(entry.seq),
      phase,
      bolt: 'bolt' in entry ? entry.bolt : null,
      clip: entry.kind === 'noted' || entry.kind === 'pictured' ? entry.blob : null,
      ...(entry.kind === 'undone' ? { corrects: entry.target } : {}),
      ...(isNewHand ? { who: entry.who } : {}),
    };
  });
}

const talkText = (entry: Entry & { readonly kind: 'heard' | 'rejected' | 'said' }): string =>
  entry.kind === 'said' ? entry.text : entry.words;

function kindOf(entry: Entry): TimelineLine['kind'] {
  switch (entry.kind) {
    case 'heard':
    case 'rejected':
    case 'said':
      return entry.kind;
    case 'measured':
      return 'measured';
    case 'noted':
      return 'note';
    case 'pictured':
      return 'picture';
    case 'timer-started':
    case 'pass-waited':
      return 'timer';
    case 'job-started':
    case 'session-opened':
    case 'handed-over':
    case 'closed':
      return 'job';
    case 'paused':
    case 'came-back':
      return 'break';
    case 'bolt-fault':
    case 'bolt-unknown':
    case 'order-broken':
    case 'wrench-dropped':
      return 'fault';
    case 'undone':
    case 'bolt-proved':
    case 'pass-repeated':
    case 'all-slackened':
    case 'order-accepted':
      return 'correction';
    case 'asked':
    case 'question-dropped':
      return 'question';
    case 'wrench-chosen':
    case 'wrenches-owned':
    case 'time-given':
    case 'terse-set':
    case 'step-done':
    case 'step-skipped':
    case 'question-answered':
    case 'setting-confirmed':
    case 'heads-marked':
    case 'bolt-done':
    case 'torque-read':
    case 'bolt-turned':
    case 'swing-proved':
    case 'bolt-replaced':
    case 'bolt-settled':
    case 'marks-read':
    case 'end-opened':
    case 'end-closed':
    case 'adapter-on':
    case 'adapter-off':
    case 'listed':
    case 'checked-by':
      return 'done';
    default:
      return assertNever(entry);
  }
}
