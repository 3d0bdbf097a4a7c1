import type { RuleName } from '../../core/job/command';
import type { PlainKey, ScreenWords } from './words';

/** The commands that can stand on a fallback button. */
const BUTTONS: Readonly<Partial<Record<RuleName, PlainKey>>> = {
  confirm: 'button-confirm',
  'not-turned': 'button-not-turned',
  'im-back': 'button-im-back',
  'set-at': 'button-set-at',
  'all-marked': 'button-all-marked',
  'bolt-done': 'button-bolt-done',
  done: 'button-done',
  'close-job': 'button-close-job',
  cancel: 'button-cancel',
  turned: 'button-turned',
  'take-back': 'button-take-back',
  'hold-on': 'button-hold-on',
  'tell-place': 'button-tell-place',
  'tell-next': 'button-tell-next',
  'say-again': 'button-say-again',
};

/** What a button for this command says; undefined for a command that no button carries. */
export function ruleLabel(words: ScreenWords, rule: RuleName): string | undefined {
  const key = BUTTONS[rule];
  return key === undefined ? undefined : words[key];
}
