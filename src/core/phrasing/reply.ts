import type { Measured, UnitName } from '../fastening/quantity';

/** A value put into a reply. How it is spoken and how it is shown are phrasing's business, by language. */
export type Said =
  /** Words from the document, spoken as they stand. */
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'count'; readonly value: number }
  /** A number read back digit by digit: "four zero", never "forty". */
  | { readonly kind: 'digits'; readonly value: number; readonly unit: UnitName | null }
  /** `printed` is what the manual prints; without it the value is written out by phrasing. */
  | { readonly kind: 'quantity'; readonly quantity: Figure }
  | { readonly kind: 'degrees'; readonly value: number }
  | { readonly kind: 'duration'; readonly ms: number }
  | { readonly kind: 'clock'; readonly hours: number }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  | { readonly kind: 'bolts'; readonly numbers: readonly number[] }
  | { readonly kind: 'replies'; readonly replies: readonly Reply[] };

/** A value with its unit, and the document's own spelling of it where there is one. */
export type Figure = Measured & { readonly printed?: string };

export const text = (t: string): Said => ({ kind: 'text', text: t });
export const count = (value: number): Said => ({ kind: 'count', value });
export const degrees = (value: number): Said => ({ kind: 'degrees', value });
export const duration = (ms: number): Said => ({ kind: 'duration', ms });
export const list = (items: readonly string[]): Said => ({ kind: 'list', items });
export const bolts = (numbers: readonly number[]): Said => ({ kind: 'bolts', numbers });
export const quantity = (q: Figure): Said => ({ kind: 'quantity', quantity: q });
export const digits = (value: number, unit: UnitName | null = null): Said => ({ kind: 'digits', value, unit });
export const clock = (hours: number): Said => ({ kind: 'clock', hours });
export const replies = (all: readonly Reply[]): Said => ({ kind: 'replies', replies: all });

/** Every reply there is and the slots its words may use. The words are in grammars/<language>/replies.yaml. */
export const REPLIES = {
  // Arriving somewhere
  warning: ['text'],
  caution: ['text'],
  note: ['text'],
  step: ['text'],
  'ask-question': ['text'],
  'pass-begins': ['pass', 'number', 'total', 'bolts'],
  'set-wrench': ['tool', 'setting'],
  'set-wrench-lubricated': ['tool', 'setting', 'lubrication'],
  'set-wrench-corrected': ['tool', 'lubrication', 'setting', 'gives'],
  'with-adapter': ['length'],
  'setting-below': ['tool', 'setting', 'least', 'most'],
  'setting-above': ['tool', 'setting', 'least', 'most'],
  'setting-too-coarse': ['setting'],
  'setting-needs-lever': [],
  'setting-not-possible': [],
  'wrench-overdue': [],
  'wrench-undated': [],
  'wrench-was-dropped': [],
  'set-angle': ['tool', 'degrees'],
  'mark-heads': [],
  'angle-swings': ['swings', 'degrees', 'clock'],
  'seen-from': ['view'],
  'order-generated': [],
  'time-asked': ['bolts', 'passes'],
  'now-due': [],
  'slacken-now': ['degrees'],
  'next-bolt': ['bolt', 'where', 'value'],
  'next-bolt-angle': ['bolt', 'where', 'degrees'],
  'next-bolt-slacken': ['bolt', 'where'],
  'next-reading': ['reading'],
  'fill-amount': ['what', 'amount'],
  'wait-for': ['timer', 'left'],
  'order-to-settle': ['bolts'],
  'order-to-settle-rule': ['rule'],
  'phase-begins': ['phase'],
  'closing-open': ['ends'],
  'closing-ready': [],
  'job-closed': [],
  // Progress
  'bolt-done': ['bolt'],
  'bolts-done': ['bolts'],
  'bolt-done-out-of-order': ['bolt', 'expected'],
  'bolt-then-next': ['bolt', 'next', 'where'],
  'next-number': ['next'],
  'pass-complete': ['pass'],
  'tightening-complete': [],
  'angle-so-far': ['degrees', 'left'],
  'setting-taken': ['setting'],
  'marked-taken': [],
  'answer-taken': ['answer'],
  'reading-taken': ['reading', 'value'],
  'step-done': [],
  'end-closed': ['what', 'left'],
  'end-opened': ['what', 'milestone'],
  'timer-running': ['timer', 'left'],
  'timer-over': ['timer'],
  'taken-back': ['what'],
  'list-taken': ['part'],
  paused: [],
  'knocked-off': [],
  'came-back': [],
  resumed: ['machine'],
  'note-taking': [],
  'note-kept': [],
  'picture-taken': [],
  'checked-by': ['person'],
  'time-taken': [],
  'no-time': [],
  'adapter-taken': ['length'],
  'adapter-removed': [],
  'wrench-chosen': ['wrench'],
  // Questions
  'which-bolt': ['bolt'],
  'turned-or-not': ['bolt'],
  'confirm-skip': ['step'],
  'confirm-sign-off': ['what', 'reason'],
  'confirm-override': ['bolts'],
  'confirm-repeat': ['pass'],
  'confirm-slacken': [],
  'confirm-reading': ['reading', 'value'],
  'confirm-close': [],
  'confirm-hand-over': [],
  'confirm-adapter': ['length'],
  'confirm-adapter-off': [],
  'confirm-out-of-order': ['bolt', 'expected'],
  'confirm-held-again': ['bolt'],
  'confirm-held-done': ['bolt'],
  'confirm-marks': ['done', 'clock'],
  'where-is-mark': ['bolt', 'clock'],
  dropped: [],
  // Answers
  'bolt-is-done': ['bolt'],
  'bolt-is-done-doubtful': ['bolt'],
  'bolt-is-open': ['bolt'],
  'bolt-is-partial': ['bolt', 'degrees'],
  'bolt-is-unknown': ['bolt'],
  'bolt-is-held': ['bolt'],
  'torque-is': ['value'],
  'torque-is-lubricated': ['value', 'lubrication'],
  'angle-is': ['degrees'],
  'no-torque-here': [],
  'no-caution-here': [],
  'place-in-pass': ['pass', 'number', 'total', 'done', 'bolts', 'bolt', 'where'],
  'place-in-step': ['step', 'number', 'total', 'phase'],
  'remaining-bolts': ['left', 'passes'],
  'remaining-steps': ['left', 'phase'],
  'loose-ends': ['ends'],
  'no-loose-ends': [],
  'whole-pass': ['pass', 'value', 'bolts'],
  'words-now': ['words'],
  'timers-left': ['timers'],
  'no-timers': [],
  'lubrication-is': ['lubrication'],
  'lubrication-unknown': [],
  'tool-is': ['tool'],
  'no-tool-here': [],
  'length-is': ['bolt', 'length'],
  'no-length': ['bolt'],
  'side-is': ['bolt', 'where'],
  'in-unit': ['value'],
  'setting-with': ['length', 'setting', 'gives'],
  'limit-is': ['limit', 'whose'],
  'no-limit-here': [],
  'angle-left': ['degrees', 'clock'],
  'list-is': ['parts'],
  'list-empty': [],
  'tightening-takes': ['bolts', 'passes'],
  'last-done': ['items'],
  // Refusals
  'not-here': [],
  'nothing-to-undo': [],
  'undo-blocked': ['what'],
  'read-back-first': ['question'],
  'answer-wrong': ['answer', 'advice'],
  'setting-wrong': ['given', 'setting'],
  'which-pounds': ['setting'],
  'bolt-not-in-pass': ['bolt'],
  'bolt-already-done': ['bolt'],
  'bolt-held': ['bolt'],
  'bolt-unknown': ['bolt'],
  'unknown-torque': ['bolt'],
  'angle-short': ['degrees', 'left'],
  'angle-not-more': ['degrees'],
  'milestone-blocked': ['ends'],
  'timer-runs': ['timer', 'left'],
  'readings-left': ['reading'],
  'reading-out-of-range': ['reading', 'value'],
  'unit-missing': [],
  'skip-refused': [],
  'repeat-refused-angle': [],
  'repeat-refused-kind': [],
  'close-refused': ['ends'],
  'close-too-early': [],
  'found-nothing-lost': [],
  'dropped-question': [],
  // Faults in the work
  'fault-held': ['bolt'],
  'fault-rule': ['bolt', 'rule'],
  'fault-noted': ['bolt'],
  'fault-look-early': [],
  'fault-note-soft': [],
  'hold-begins': [],
  'job-on-hold': ['bolt'],
  'held-open': ['bolt'],
  'held-done': ['bolt'],
  'held-needs-new': ['bolt'],
  'mark-proves-partly': ['bolt', 'degrees', 'left'],
  'bolt-is-in-doubt': ['bolt'],
  'mark-proves-done': ['bolt'],
  'mark-proves-open': ['bolt'],
  'mark-proves-nothing': ['bolt', 'before', 'after'],
  'replaced-held': ['bolt'],
  'replaced-rule': ['bolt', 'rule'],
  'wrench-dropped': [],
  'slackened-taken': [],
  'repeat-taken': ['pass'],
  // What an entry of the log says it was: for the timeline, for undo and for "last three"
  'did-start': [],
  'did-open': [],
  'did-pause': [],
  'did-knock-off': [],
  'did-return': [],
  'did-have-time': [],
  'did-choose-wrench': ['wrench'],
  'did-terse': [],
  'did-full': [],
  'did-step': ['text'],
  'did-skip': ['text'],
  'did-answer': ['text', 'answer'],
  'did-answer-wrong': ['text', 'answer'],
  'did-setting': ['value'],
  'did-marked': [],
  'did-bolt': ['bolt', 'pass'],
  'did-bolt-out-of-order': ['bolt', 'pass'],
  'did-turn': ['bolt', 'degrees'],
  'did-fault': ['bolt', 'fault'],
  'did-unknown': ['bolt'],
  'did-prove-done': ['bolt'],
  'did-prove-open': ['bolt'],
  'did-prove-partly': ['bolt', 'degrees'],
  'did-settle-done': ['bolt'],
  'did-settle-open': ['bolt'],
  'did-read-marks': ['pass'],
  'did-replace': ['bolt'],
  'did-order-broken': [],
  'did-order-accepted': [],
  'did-order-override': [],
  'did-repeat': ['pass'],
  'did-wait': ['pass'],
  'did-slacken': [],
  'did-measure': ['reading', 'value'],
  'did-open-end': ['what'],
  'did-refit': ['what'],
  'did-find': ['what'],
  'did-sign-off': ['what', 'reason'],
  'did-timer': ['timer', 'length'],
  'did-ask': [],
  'did-drop-question': [],
  'did-adapter-on': ['length'],
  'did-adapter-off': [],
  'did-drop-wrench': [],
  'did-list': ['part'],
  'did-check': ['person'],
  'did-note': [],
  'did-picture': [],
  'did-undo': ['target'],
  'did-hand-over': [],
  'did-close': [],
  'did-hear': ['words'],
  'did-reject': ['words'],
  'did-say': ['text'],
  // Only shown, never spoken: the lines and values of the Bench
  'shown-pass': ['number', 'total', 'done', 'bolts'],
  'shown-step': ['number', 'total'],
  'shown-bolt': ['bolt', 'where'],
  'shown-asking': [],
  'shown-value': ['value'],
  'shown-degrees': ['degrees'],
  'shown-reading': ['reading'],
  'shown-swing': ['left'],
  // Names of things the core knows by id
  'end-named': ['what'],
  'end-dropped': [],
  'end-wrench': ['what'],
  'milestone-turn-by-hand': [],
  'milestone-crank': [],
  'milestone-fuel-on': [],
  'milestone-first-start': [],
  'milestone-hand-back': [],
  // Reasons of a sign-off, by the id the grammar gives
  'reason-not-fitted-here': [],
  'reason-waiting-for-a-part': [],
  'reason-tested-another-way': [],
  'reason-owner-decided': [],
  // Faults by name
  'fault-clicked-early': [],
  'fault-felt-soft': [],
  'fault-went-past': [],
  'fault-snapped': [],
  'fault-pulled-through': [],
  'fault-under-after-angle': [],
  'fault-clicked-twice': [],
  // The tool itself
  'say-again': [],
  almost: ['given'],
  'almost-bolt': ['given', 'highest'],
  'not-saved': [],
  stopped: [],
  'ears-are-off': [],
  'ears-are-on': [],
  'too-loud': [],
  'speech-terse': [],
  'speech-full': [],
  'speech-slower': [],
  'speech-faster': [],
  'microphone-refused': [],
  'microphone-missing': [],
  'microphone-lost': [],
  'recogniser-failed': [],
  'job-begins': ['title'],
  demonstration: [],
} as const satisfies Record<string, readonly string[]>;

export type ReplyCode = keyof typeof REPLIES;

export const isReplyCode = (code: string): code is ReplyCode => Object.hasOwn(REPLIES, code);

/** All codes, for checks and tables. */
export const REPLY_CODES: readonly ReplyCode[] = Object.keys(REPLIES).filter(isReplyCode);

type SlotOf<C extends ReplyCode> = (typeof REPLIES)[C][number];

export type Reply = { readonly code: ReplyCode; readonly slots: Readonly<Record<string, Said>> };

/** A reply with exactly the slots its code declares. */
export const reply = <C extends ReplyCode>(code: C, slots: Record<SlotOf<C>, Said>): Reply => ({ code, slots });

/** The reason of a sign-off by its id in the grammar; one the replies do not know is said as it stands. */
export function reason(id: string): Said {
  const code = `reason-${id}`;
  return isReplyCode(code) ? replies([{ code, slots: {} }]) : text(id);
}
