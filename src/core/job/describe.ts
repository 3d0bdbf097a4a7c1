import { count, degrees, duration, list, quantity, type Reply, reason, replies, reply, text } from '../phrasing/reply';
import { assertNever } from '../result';
import { wayOf } from './adapter';
import type { Entry } from './entry';
import type { Job } from './job';
import { type Plan, passIn, stepIn } from './plan';

/** What one entry of the log says happened, as a reply that phrasing puts into words. */
export function describe(plan: Plan, entry: Entry): Reply {
  switch (entry.kind) {
    case 'job-started':
      return reply('did-start', {});
    case 'session-opened':
      return reply('did-open', {});
    case 'paused':
      return entry.why === 'held' ? reply('did-pause', {}) : reply('did-knock-off', {});
    case 'came-back':
      return reply('did-return', {});
    case 'wrenches-owned':
      return reply('did-own-wrenches', { wrenches: list(entry.wrenches.map(({ say }) => say)) });
    case 'wrench-chosen':
      return reply('did-choose-wrench', { wrench: text(entry.wrench.say) });
    case 'time-given':
      return reply('did-have-time', {});
    case 'terse-set':
      return entry.terse ? reply('did-terse', {}) : reply('did-full', {});
    case 'step-done':
      return reply('did-step', { text: stepSay(plan, entry.step) });
    case 'step-skipped':
      return reply('did-skip', { text: stepSay(plan, entry.step) });
    case 'question-answered':
      return answered(plan, entry);
    case 'setting-confirmed':
      return reply('did-setting', { value: quantity({ value: entry.value, unit: entry.unit }) });
    case 'heads-marked':
      return reply('did-marked', {});
    case 'bolt-done':
      return reply(entry.inOrder ? 'did-bolt' : 'did-bolt-out-of-order', {
        bolt: count(entry.bolt),
        pass: passSay(plan, entry),
      });
    case 'bolt-turned':
      return reply('did-turn', { bolt: count(entry.bolt), degrees: degrees(entry.degrees) });
    case 'torque-read':
      return reply('did-read-torque', {
        bolt: count(entry.bolt),
        value: quantity({ value: entry.value, unit: entry.unit }),
      });
    case 'bolt-fault':
      return reply('did-fault', { bolt: count(entry.bolt), fault: replies([reply(`fault-${entry.fault}`, {})]) });
    case 'bolt-unknown':
      return reply('did-unknown', { bolt: count(entry.bolt) });
    case 'bolt-proved':
      return reply(entry.verdict === 'done' ? 'did-prove-done' : 'did-prove-open', { bolt: count(entry.bolt) });
    case 'swing-proved':
      return reply('did-prove-partly', { bolt: count(entry.bolt), degrees: degrees(entry.degrees) });
    case 'bolt-settled':
      return reply(entry.as === 'done' ? 'did-settle-done' : 'did-settle-open', { bolt: count(entry.bolt) });
    case 'marks-read':
      return reply('did-read-marks', { pass: passSay(plan, entry) });
    case 'bolt-replaced':
      return reply('did-replace', { bolt: count(entry.bolt) });
    case 'order-broken':
      return reply('did-order-broken', {});
    case 'order-accepted':
      return entry.override ? reply('did-order-override', {}) : reply('did-order-accepted', {});
    case 'pass-repeated':
      return reply('did-repeat', { pass: passSay(plan, entry) });
    case 'pass-waited':
      return reply('did-wait', { pass: passSay(plan, entry) });
    case 'all-slackened':
      return reply('did-slacken', {});
    case 'measured':
      return reply('did-measure', {
        reading: text(readingSay(plan, entry.step, entry.reading)),
        value: quantity({ value: entry.value, unit: entry.unit }),
      });
    case 'end-opened':
      return reply('did-open-end', {
        what: entry.why === 'dropped' ? replies([reply('end-dropped', {})]) : text(entry.what),
      });
    case 'end-closed':
      return endClosed(plan, entry);
    case 'timer-started':
      return reply('did-timer', {
        timer: text(plan.procedure.timers.get(entry.timer)?.say ?? entry.timer),
        length: duration(entry.ms),
      });
    case 'asked':
      return reply('did-ask', {});
    case 'question-dropped':
      return reply('did-drop-question', {});
    case 'adapter-on':
      return reply('did-adapter-on', { length: quantity({ value: entry.millimetres, unit: 'mm' }), way: wayOf(entry) });
    case 'adapter-off':
      return reply('did-adapter-off', {});
    case 'wrench-dropped':
      return reply('did-drop-wrench', {});
    case 'listed':
      return reply('did-list', { part: text(plan.procedure.parts.get(entry.part)?.say ?? entry.part) });
    case 'checked-by':
      return reply('did-check', { person: text(entry.person) });
    case 'noted':
      return reply('did-note', {});
    case 'pictured':
      return reply('did-picture', {});
    case 'undone':
      return reply('did-undo', {});
    case 'handed-over':
      return reply('did-hand-over', {});
    case 'closed':
      return reply('did-close', {});
    case 'heard':
      return reply('did-hear', { words: text(entry.words) });
    case 'rejected':
      return reply('did-reject', { words: text(entry.words) });
    case 'said':
      return reply('did-say', { text: text(entry.text) });
    default:
      return assertNever(entry);
  }
}

const stepSay = (plan: Plan, step: string) => text(stepIn(plan, step).step.say);
const passSay = (plan: Plan, at: { readonly step: string; readonly pass: string }) =>
  text(passIn(plan, at.step, at.pass).say);

export function readingSay(plan: Plan, stepId: string, reading: string): string {
  const { step } = stepIn(plan, stepId);
  return step.kind === 'measure' ? (step.readings.find((r) => r.id === reading)?.say ?? reading) : reading;
}

function answered(plan: Plan, entry: Entry & { readonly kind: 'question-answered' }): Reply {
  const { step } = stepIn(plan, entry.step);
  const say = step.question?.answers.find((a) => a.id === entry.answer)?.say[0] ?? entry.answer;
  return reply(entry.right ? 'did-answer' : 'did-answer-wrong', { text: text(step.say), answer: text(say) });
}

function endClosed(plan: Plan, entry: Entry & { readonly kind: 'end-closed' }): Reply {
  const what = text(plan.procedure.looseEnds.get(entry.end)?.say ?? plan.steps.get(entry.end)?.step.say ?? entry.end);
  switch (entry.how) {
    case 'refitted':
      return reply('did-refit', { what });
    case 'found':
      return reply('did-find', { what: replies([reply('end-dropped', {})]) });
    case 'signed-off':
      return reply('did-sign-off', { what, reason: reason(entry.reason) });
  }
}

const WORK: ReadonlySet<Entry['kind']> = new Set([
  'step-done',
  'question-answered',
  'setting-confirmed',
  'heads-marked',
  'bolt-done',
  'bolt-turned',
  'bolt-proved',
  'swing-proved',
  'bolt-settled',
  'measured',
  'end-closed',
  'pass-waited',
]);

/** The last few confirmed pieces of work, newest last, without what was taken back. */
export function lastWorkDone(job: Job, many: number): readonly Reply[] {
  return job.entries
    .filter((e) => WORK.has(e.kind) && !job.undone.has(e.seq))
    .slice(-many)
    .map((e) => describe(job.plan, e));
}
