import type { Manner, SlotValue } from '../language/grammar';

/** The public rules of the command grammar and how dearly each must be heard. The one list of what can be said. */
export const MANNERS = {
  stop: 'stop',
  'tell-next': 'harmless',
  'say-again': 'harmless',
  'tell-torque': 'harmless',
  'tell-caution': 'harmless',
  'tell-place': 'harmless',
  'tell-remaining': 'harmless',
  'tell-loose-ends': 'harmless',
  'tell-bolt': 'harmless',
  'tell-pass': 'harmless',
  'tell-words': 'harmless',
  'tell-brief': 'harmless',
  'tell-timers': 'harmless',
  'tell-lubrication': 'harmless',
  'tell-tool': 'harmless',
  'tell-length': 'harmless',
  'tell-side': 'harmless',
  'tell-in-unit': 'harmless',
  'tell-setting': 'harmless',
  'tell-limit': 'harmless',
  'tell-angle-left': 'harmless',
  'tell-list': 'harmless',
  'tell-time-needed': 'harmless',
  'tell-sum': 'harmless',
  'tell-worked': 'harmless',
  'tell-estimate': 'harmless',
  'tell-proof': 'harmless',
  'tell-tension': 'harmless',
  'tell-pull': 'harmless',
  'tell-wrenches': 'harmless',
  'tell-stretch': 'harmless',
  'tell-freezing': 'harmless',
  'tell-mix': 'harmless',
  'tell-concentrate': 'harmless',
  terse: 'harmless',
  full: 'harmless',
  slower: 'harmless',
  faster: 'harmless',
  'show-bench': 'harmless',
  'show-record': 'harmless',
  'show-jobs': 'harmless',
  'show-procedures': 'harmless',
  'show-setup': 'harmless',
  'show-card': 'harmless',
  done: 'progress',
  clicked: 'progress',
  'bolt-done': 'progress',
  'bolts-done': 'progress',
  'so-far': 'progress',
  'all-marked': 'progress',
  'set-at': 'progress',
  'use-wrench': 'progress',
  'use-size': 'progress',
  answer: 'progress',
  measured: 'progress',
  'measured-at': 'progress',
  'end-closed': 'progress',
  'came-off': 'progress',
  'dropped-one': 'progress',
  'found-it': 'progress',
  'take-back': 'progress',
  'hold-on': 'progress',
  'im-back': 'progress',
  'start-timer': 'progress',
  'take-note': 'progress',
  'take-picture': 'progress',
  'add-to-list': 'progress',
  'knocking-off': 'progress',
  'checked-by': 'progress',
  'have-time': 'progress',
  'no-time': 'progress',
  'next-pass-ready': 'progress',
  'ears-off': 'progress',
  'ears-on': 'progress',
  'clicked-early': 'progress',
  'felt-soft': 'progress',
  'went-past': 'progress',
  'past-by': 'progress',
  snapped: 'progress',
  'out-of-order': 'progress',
  'not-sure': 'progress',
  'pulled-through': 'progress',
  'clicked-twice': 'progress',
  'dropped-wrench': 'progress',
  'mark-at': 'critical',
  'no-mark': 'progress',
  'bolt-replaced': 'progress',
  'skip-step': 'critical',
  'sign-off': 'critical',
  'go-ahead-anyway': 'critical',
  'repeat-pass': 'critical',
  'slacken-all': 'critical',
  'adapter-on': 'critical',
  'adapter-off': 'critical',
  confirm: 'critical',
  cancel: 'progress',
  turned: 'critical',
  'not-turned': 'critical',
  'close-job': 'critical',
  'hand-over': 'critical',
  'carry-on': 'critical',
  'begin-procedure': 'critical',
  'open-job': 'critical',
  'show-around': 'progress',
} as const satisfies Record<string, Manner>;

export type RuleName = keyof typeof MANNERS;

/** What opens another screen. */
export const SHOWING = [
  'show-bench',
  'show-record',
  'show-jobs',
  'show-procedures',
  'show-setup',
  'show-card',
] as const satisfies readonly RuleName[];

export type ShowingRule = (typeof SHOWING)[number];

/** What is heard only where no job is open: core/porch answers it. */
const AT_THE_PORCH = ['carry-on', 'begin-procedure', 'open-job', 'show-around'] as const satisfies readonly RuleName[];

export type PorchRule = (typeof AT_THE_PORCH)[number];

export const isAtPorch = (rule: RuleName): rule is PorchRule => AT_THE_PORCH.some((one) => one === rule);

const isRuleName = (rule: string): rule is RuleName => Object.hasOwn(MANNERS, rule);

/** A command as the job core takes it. Slots are read by name; a missing one is a bug of the grammar, caught by its tests. */
export type Command<R extends RuleName = RuleName> = {
  readonly rule: R;
  readonly slots: Readonly<Record<string, SlotValue>>;
};

export const command = (rule: RuleName, slots: Command['slots'] = {}): Command => ({ rule, slots });

/** The command that a public rule of the grammar stands for, or undefined for a rule nobody decides about. */
export function commandOf(rule: string, slots: Command['slots']): Command | undefined {
  return isRuleName(rule) ? { rule, slots } : undefined;
}

export function integerIn(c: Command, slot: string): number | undefined {
  const value = c.slots[slot];
  return value?.kind === 'integer' ? value.value : undefined;
}

export function readingIn(
  c: Command,
  slot: string,
): { readonly value: number; readonly unit: string | null } | undefined {
  const value = c.slots[slot];
  return value?.kind === 'reading' ? value : undefined;
}

export function optionIn(c: Command, slot: string): string | undefined {
  const value = c.slots[slot];
  return value?.kind === 'option' ? value.id : undefined;
}
