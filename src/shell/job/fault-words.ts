import type { StoreFault } from '../../core/log/log-store';
import type { PlainKey, Say } from '../../ui/words/words';
import type { Damage, OpenFault } from './job-log';

const STORE: Readonly<Record<StoreFault['code'], PlainKey>> = {
  conflict: 'log-conflict',
  'no-such-job': 'job-missing',
  'storage-full': 'storage-full',
  'storage-failed': 'storage-failed',
  'storage-missing': 'store-not-lasting',
  'newer-store': 'storage-newer',
};

const DAMAGE: Readonly<Record<Damage['why'], PlainKey>> = {
  'too-big': 'damage-too-big',
  'not-an-entry': 'damage-not-an-entry',
  'newer-log': 'damage-newer-log',
  'not-canonical': 'damage-not-canonical',
  'bad-hash': 'damage-bad-hash',
  gap: 'damage-gap',
  'broken-chain': 'damage-broken-chain',
  'cut-short': 'damage-cut-short',
  'unknown-entry': 'damage-unknown-entry',
  'stray-entry': 'damage-stray-entry',
};

export const storeFaultWords = (fault: StoreFault, say: Say): string => say(STORE[fault.code]);

export const damageWhy = (why: Damage['why'], say: Say): string => say(DAMAGE[why]);

export const damageWords = ({ entry, why }: Damage, say: Say): string =>
  say('log-damaged', { entry, why: damageWhy(why, say) });

/** Why a job could not be opened, for a person. */
export function openFaultWords(fault: OpenFault, say: Say): string {
  switch (fault.code) {
    case 'procedure-broken': {
      const [issue] = fault.issues;
      return say('job-unreadable', {
        issue: issue ? `${issue.line}:${issue.column} ${issue.message} ${issue.mend}` : '',
      });
    }
    case 'log-damaged':
      return damageWords(fault.damage, say);
    case 'other-language':
      return say('job-other-language', { language: fault.language });
    case 'store':
      return storeFaultWords(fault.fault, say);
  }
}
