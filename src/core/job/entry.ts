import type { UnitName } from '../fastening/quantity';
import type { Milestone, RecoveryAction } from '../procedure/procedure';
import type { AdapterOn } from './adapter';
import type { ChosenWrench } from './chosen-wrench';
import type { Pending } from './pending';

/** When and by whom an entry was made. `mono` runs on inside one `session`; `at` is wall time, UTC milliseconds. */
export type Moment = { readonly at: number; readonly mono: number; readonly session: string };

/** A body with its place in the log. Bytes, hash and version belong to the log; nothing here reads them. */
export type Entry = EntryBody & Moment & { readonly seq: number; readonly who: string };

/** What a job log can hold. State entries decide where the job is; talk entries say what was heard and said. */
export type EntryBody = StateBody | TalkBody;

type InPass = { readonly step: string; readonly pass: string };
type AtBolt = InPass & { readonly bolt: number };

export type BoltFault =
  | 'clicked-early'
  | 'felt-soft'
  | 'went-past'
  | 'snapped'
  | 'pulled-through'
  | 'under-after-angle'
  | 'clicked-twice';

export type UnknownWhy = 'not-sure' | 'interrupted' | 'taken-back';

export type StateBody =
  | {
      readonly kind: 'job-started';
      readonly job: string;
      readonly procedure: string;
      /** The document as it was when the job began: a later edit of the file never changes a running job. */
      readonly text: string;
      readonly textHash: string;
      readonly machine: string;
      /** Who may be named as having checked something. */
      readonly people: readonly string[];
    }
  | { readonly kind: 'session-opened' }
  /** The wrench that is really in hand where the document names a tool: its settings are worked out for it. */
  | { readonly kind: 'wrench-chosen'; readonly tool: string; readonly wrench: ChosenWrench }
  /** The wrenches there are in this workshop, as Setup told them: from among them one is chosen by name. */
  | { readonly kind: 'wrenches-owned'; readonly wrenches: readonly ChosenWrench[] }
  | { readonly kind: 'time-given'; readonly step: string }
  | { readonly kind: 'terse-set'; readonly terse: boolean }
  | { readonly kind: 'paused'; readonly why: 'held' | 'knocked-off' }
  | { readonly kind: 'came-back' }
  | { readonly kind: 'step-done'; readonly step: string }
  | { readonly kind: 'step-skipped'; readonly step: string }
  | { readonly kind: 'question-answered'; readonly step: string; readonly answer: string; readonly right: boolean }
  | ({ readonly kind: 'setting-confirmed'; readonly value: number; readonly unit: UnitName } & InPass)
  | ({ readonly kind: 'heads-marked' } & InPass)
  | ({ readonly kind: 'bolt-done'; readonly inOrder: boolean } & AtBolt)
  /** The torque at the end of a turn, in a pass with a floor. */
  | ({
      readonly kind: 'torque-read';
      readonly value: number;
      readonly unit: UnitName;
      readonly over: boolean;
    } & AtBolt)
  | ({ readonly kind: 'bolt-turned'; readonly degrees: number } & AtBolt)
  | ({
      readonly kind: 'bolt-fault';
      readonly fault: BoltFault;
      readonly action: RecoveryAction | 'hold' | 'note';
    } & AtBolt)
  | ({ readonly kind: 'bolt-unknown'; readonly why: UnknownWhy } & AtBolt)
  | ({ readonly kind: 'bolt-proved'; readonly verdict: 'done' | 'open'; readonly clock: number | null } & AtBolt)
  /** The mark stands where the swings reported before the doubt left it: so much of the angle has been given. */
  | ({ readonly kind: 'swing-proved'; readonly degrees: number; readonly clock: number | null } & AtBolt)
  | ({ readonly kind: 'bolt-replaced'; readonly action: RecoveryAction | 'hold' } & AtBolt)
  /** A held bolt settled by what the manual said, on somebody's word: done as it is, or to be done again. */
  | ({ readonly kind: 'bolt-settled'; readonly as: 'done' | 'open' } & AtBolt)
  /** Every mark of an angle pass was looked at before it was left. */
  | ({ readonly kind: 'marks-read' } & InPass)
  | ({ readonly kind: 'order-broken' } & InPass)
  | ({ readonly kind: 'order-accepted'; readonly override: boolean } & InPass)
  | ({ readonly kind: 'pass-repeated' } & InPass)
  | ({ readonly kind: 'pass-waited' } & InPass)
  | { readonly kind: 'all-slackened'; readonly step: string }
  | {
      readonly kind: 'measured';
      readonly step: string;
      readonly reading: string;
      readonly value: number;
      readonly unit: UnitName;
      /** null where the document names no limit. */
      readonly within: boolean | null;
    }
  | {
      readonly kind: 'end-opened';
      readonly end: string;
      readonly what: string;
      readonly blocks: Milestone;
      readonly why: 'dropped' | 'came-off';
    }
  | {
      readonly kind: 'end-closed';
      readonly end: string;
      readonly how: 'refitted' | 'found' | 'signed-off';
      readonly reason: string;
    }
  | { readonly kind: 'timer-started'; readonly timer: string; readonly ms: number }
  | { readonly kind: 'asked'; readonly question: Pending }
  | { readonly kind: 'question-dropped' }
  | ({ readonly kind: 'adapter-on' } & AdapterOn)
  | { readonly kind: 'adapter-off' }
  /** The tool as the document names it; its say names what is in doubt from here on. */
  | { readonly kind: 'wrench-dropped'; readonly tool: string }
  | { readonly kind: 'listed'; readonly part: string }
  | { readonly kind: 'checked-by'; readonly person: string; readonly step: string }
  | { readonly kind: 'noted'; readonly blob: string; readonly step: string }
  | { readonly kind: 'pictured'; readonly blob: string; readonly step: string }
  /** Points at the entry it takes back; the fold leaves that one out. */
  | { readonly kind: 'undone'; readonly target: number }
  | { readonly kind: 'handed-over' }
  | { readonly kind: 'closed' };

export type TalkBody =
  | {
      readonly kind: 'heard';
      readonly words: string;
      readonly score: number;
      readonly by: 'voice' | 'touch' | 'typed';
      /** The rule of the grammar the words were taken for. */
      readonly command: string;
    }
  | { readonly kind: 'rejected'; readonly words: string; readonly score: number; readonly why: string }
  | { readonly kind: 'said'; readonly code: string; readonly text: string };

const TALK: ReadonlySet<EntryBody['kind']> = new Set(['heard', 'rejected', 'said']);

export const isTalk = (body: EntryBody): body is TalkBody => TALK.has(body.kind);

/** Talk, and a question that may be asked again, can wait for the next durable write; everything else cannot. */
export const durability = (body: EntryBody): 'strict' | 'relaxed' =>
  isTalk(body) || body.kind === 'asked' || body.kind === 'question-dropped' ? 'relaxed' : 'strict';

/** Every kind an entry can have. The compiler holds it complete: a missing kind does not type-check. */
export const ENTRY_KINDS = Object.keys({
  'job-started': true,
  'session-opened': true,
  paused: true,
  'came-back': true,
  'wrench-chosen': true,
  'wrenches-owned': true,
  'time-given': true,
  'terse-set': true,
  'step-done': true,
  'step-skipped': true,
  'question-answered': true,
  'setting-confirmed': true,
  'heads-marked': true,
  'bolt-done': true,
  'bolt-turned': true,
  'torque-read': true,
  'bolt-fault': true,
  'bolt-unknown': true,
  'bolt-proved': true,
  'swing-proved': true,
  'bolt-replaced': true,
  'bolt-settled': true,
  'marks-read': true,
  'order-broken': true,
  'order-accepted': true,
  'pass-repeated': true,
  'pass-waited': true,
  'all-slackened': true,
  measured: true,
  'end-opened': true,
  'end-closed': true,
  'timer-started': true,
  asked: true,
  'question-dropped': true,
  'adapter-on': true,
  'adapter-off': true,
  'wrench-dropped': true,
  listed: true,
  'checked-by': true,
  noted: true,
  pictured: true,
  undone: true,
  'handed-over': true,
  closed: true,
  heard: true,
  rejected: true,
  said: true,
} satisfies Record<EntryBody['kind'], true>) as readonly EntryBody['kind'][];
