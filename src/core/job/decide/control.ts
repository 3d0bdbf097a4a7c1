import { count, replies, reply } from '../../phrasing/reply';
import type { Command, RuleName } from '../command';
import { type Decision, does, told } from '../decision';
import { lastWorkDone } from '../describe';
import type { EntryBody } from '../entry';
import { boltInDoubt } from '../evolve';
import type { Job } from '../job';

const CONTROL: ReadonlySet<RuleName> = new Set([
  'stop',
  'ears-off',
  'ears-on',
  'terse',
  'full',
  'slower',
  'faster',
  'take-note',
  'take-picture',
  'hold-on',
  'knocking-off',
  'im-back',
]);

export const isControl = (rule: RuleName): boolean => CONTROL.has(rule);

/** Commands about the conversation itself. Stop is answered in every state, whatever else is going on. */
export function control(job: Job, c: Command): Decision {
  switch (c.rule) {
    case 'stop':
      return { verdict: 'done', entries: [], replies: [reply('stopped', {})], effects: ['hush'] };
    case 'ears-off':
      return { ...told(reply('ears-are-off', {})), effects: ['ears-off'] };
    case 'ears-on':
      return { ...told(reply('ears-are-on', {})), effects: ['ears-on'] };
    case 'terse':
      return { ...told(reply('speech-terse', {})), effects: ['terse'] };
    case 'full':
      return { ...told(reply('speech-full', {})), effects: ['full'] };
    case 'slower':
      return { ...told(reply('speech-slower', {})), effects: ['slower'] };
    case 'faster':
      return { ...told(reply('speech-faster', {})), effects: ['faster'] };
    case 'take-note':
      return { ...told(reply('note-taking', {})), effects: ['record-note'] };
    case 'take-picture':
      return { ...told(), effects: ['take-picture'] };
    case 'hold-on':
      return job.status === 'open' && !job.paused
        ? does([{ kind: 'paused', why: 'held' }], [reply('paused', {})])
        : told(reply('paused', {}));
    case 'knocking-off':
      return knockOff(job);
    case 'im-back':
      return job.paused ? does(comeBack(job), welcome(job)) : told(reply('not-here', {}));
    default:
      return told(reply('not-here', {}));
  }
}

/** Inside an angle pass nobody knocks off with a bolt in doubt: the pass is finished or its marks are read first. */
function knockOff(job: Job): Decision {
  if (job.status !== 'open' || job.paused) return told(reply('paused', {}));
  const doubt = boltInDoubt(job);
  if (doubt && job.streak > 0) return told(reply('bolt-is-in-doubt', { bolt: count(doubt.bolt) }));
  return does([{ kind: 'paused', why: 'knocked-off' }], [reply('knocked-off', {})]);
}

/** An interruption in an angle pass leaves the bolt at the cursor UNKNOWN: an angle is never given again by guess. */
export function comeBack(job: Job): readonly EntryBody[] {
  const doubt = boltInDoubt(job);
  return [
    { kind: 'came-back' },
    ...(doubt ? [{ kind: 'bolt-unknown' as const, why: 'interrupted' as const, ...doubt }] : []),
  ];
}

export function welcome(job: Job) {
  const last = lastWorkDone(job, 3);
  return last.length > 0 ? [reply('last-done', { items: replies(last) })] : [reply('came-back', {})];
}
