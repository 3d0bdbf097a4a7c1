import { replies, reply } from '../../phrasing/reply';
import { assertNever } from '../../result';
import type { Command, RuleName } from '../command';
import { type Decision, does, refused, told } from '../decision';
import { lastWorkDone } from '../describe';
import { boltInDoubt } from '../doubt';
import type { EntryBody } from '../entry';
import type { Job } from '../job';
import { leave } from './leaving';

const CONTROL = [
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
] as const satisfies readonly RuleName[];

export type ControlRule = (typeof CONTROL)[number];

export const isControl = (rule: RuleName): rule is ControlRule => CONTROL.some((one) => one === rule);

/** Commands about the conversation itself. Stop is answered in every state, whatever else is going on. */
export function control(job: Job, c: Command<ControlRule>): Decision {
  switch (c.rule) {
    case 'stop':
      return { verdict: 'done', entries: [], replies: [reply('stopped', {})], effects: ['hush'] };
    case 'ears-off':
      return { ...told(reply('ears-are-off', {})), effects: ['ears-off'] };
    case 'ears-on':
      return { ...told(reply('ears-are-on', {})), effects: ['ears-on'] };
    case 'terse':
      return does([{ kind: 'terse-set', terse: true }], [reply('speech-terse', {})]);
    case 'full':
      return does([{ kind: 'terse-set', terse: false }], [reply('speech-full', {})]);
    case 'slower':
      return { ...told(reply('speech-slower', {})), effects: ['slower'] };
    case 'faster':
      return { ...told(reply('speech-faster', {})), effects: ['faster'] };
    // Whoever takes it says how it goes. Nothing of the job moves, so it may be on a break or while a question waits.
    case 'take-note':
      return job.status === 'open' ? { ...told(), effects: ['record-note'] } : refused(reply('not-here', {}));
    case 'take-picture':
      return job.status === 'open' ? { ...told(), effects: ['take-picture'] } : refused(reply('not-here', {}));
    case 'hold-on':
      return job.status === 'open' && !job.paused
        ? does([{ kind: 'paused', why: 'held' }], [reply('paused', {})])
        : told(reply('paused', {}));
    case 'knocking-off':
      return job.status === 'open' && !job.paused ? leave(job, 'knock-off') : told(reply('paused', {}));
    case 'im-back':
      return job.paused ? does(comeBack(job), welcome(job)) : told(reply('not-here', {}));
    default:
      return assertNever(c.rule);
  }
}

/** An interruption in an angle pass leaves the bolt at the cursor UNKNOWN: an angle is never given again by guess. */
function comeBack(job: Job): readonly EntryBody[] {
  const doubt = boltInDoubt(job);
  return [
    { kind: 'came-back' },
    ...(doubt ? [{ kind: 'bolt-unknown' as const, why: 'interrupted' as const, ...doubt }] : []),
  ];
}

/** Back after a break: the last three things done, before the place is told. */
function welcome(job: Job) {
  const last = lastWorkDone(job, 3);
  return last.length > 0 ? [reply('last-done', { items: replies(last) })] : [reply('came-back', {})];
}
