import { type Command, integerIn, type PorchRule, type RuleName, type ShowingRule } from '../job/command';
import { type Reply, reply, text } from '../phrasing/reply';
import { assertNever } from '../result';
import type { Asked, JobAt, Porch } from './porch';

/** What a sentence asks the program to do. Whatever writes has been read back. */
export type PorchAct =
  | { readonly do: 'begin'; readonly procedure: string }
  | { readonly do: 'open' | 'read' | 'brief'; readonly job: string }
  | { readonly do: 'show'; readonly screen: Exclude<ShowingRule, 'show-bench' | 'show-record' | 'show-card'> }
  | { readonly do: 'tour' | 'hush' | 'slower' | 'faster' | 'ears-off' | 'ears-on' };

/** What a command comes to where no job is open: words, and perhaps an act, or a question that must be answered first. */
export type PorchAnswer = {
  readonly replies: readonly Reply[];
  readonly act: PorchAct | null;
  readonly asked: Asked | null;
};

type ControlRule = 'stop' | 'confirm' | 'cancel' | 'tell-brief' | 'slower' | 'faster' | 'ears-off' | 'ears-on';
type Answered = PorchRule | ShowingRule | ControlRule;

/** Total: what does not belong here is told so, and does nothing. */
export function answerAtPorch(porch: Porch, c: Command): PorchAnswer {
  return isAnswered(c) ? answered(porch, c) : says(reply('no-job-open', {}));
}

function answered(porch: Porch, c: Command<Answered>): PorchAnswer {
  const { last, asked } = porch;
  switch (c.rule) {
    case 'stop':
      return does({ do: 'hush' }, reply('stopped', {}));
    case 'begin-procedure': {
      const procedure = at(porch.procedures, c);
      return procedure ? asks({ kind: 'begin', procedure }) : NOTHING_OPEN;
    }
    case 'open-job': {
      const job = at(porch.jobs, c);
      return job ? opening(job) : NOTHING_OPEN;
    }
    case 'carry-on':
      return last ? opening(last) : NOTHING_OPEN;
    case 'confirm':
      return asked ? does(agreed(asked)) : NOTHING_OPEN;
    case 'cancel':
      return says(reply('dropped-question', {}));
    case 'tell-brief':
      return last ? does({ do: 'brief', job: last.id }) : NOTHING_OPEN;
    case 'show-record':
      return last ? does({ do: 'read', job: last.id }, reply(c.rule, {})) : NOTHING_OPEN;
    case 'show-bench':
    case 'show-card':
      return NOTHING_OPEN;
    case 'show-jobs':
    case 'show-procedures':
    case 'show-setup':
      return does({ do: 'show', screen: c.rule }, reply(c.rule, {}));
    case 'show-around':
      return does({ do: 'tour' });
    case 'slower':
    case 'faster':
      return { ...does({ do: c.rule }, reply(`speech-${c.rule}`, {})), asked };
    case 'ears-off':
      return { ...does({ do: c.rule }, reply('ears-are-off', {})), asked };
    case 'ears-on':
      return { ...does({ do: c.rule }, reply('ears-are-on', {})), asked };
    default:
      return assertNever(c.rule);
  }
}

/** A closed job is only read, which changes nothing. */
const opening = (job: JobAt): PorchAnswer =>
  job.closed ? does({ do: 'read', job: job.id }, reply('show-record', {})) : asks({ kind: 'open', job });

function agreed(asked: Asked): PorchAct {
  switch (asked.kind) {
    case 'begin':
      return { do: 'begin', procedure: asked.procedure.id };
    case 'open':
      return { do: 'open', job: asked.job.id };
    default:
      return assertNever(asked);
  }
}

function asks(asked: Asked): PorchAnswer {
  const question =
    asked.kind === 'begin'
      ? reply('confirm-begin', { title: text(asked.procedure.title) })
      : reply('confirm-open', { title: text(asked.job.title) });
  return { replies: [question], act: null, asked };
}

const says = (...replies: readonly Reply[]): PorchAnswer => ({ replies, act: null, asked: null });

const does = (act: PorchAct, ...replies: readonly Reply[]): PorchAnswer => ({ replies, act, asked: null });

const NOTHING_OPEN = says(reply('no-job-open', {}));

const at = <T extends { readonly number: number }>(lines: readonly T[], c: Command): T | undefined =>
  lines.find(({ number }) => number === integerIn(c, 'line'));

const ANSWERED: Readonly<Record<Answered, true>> = {
  stop: true,
  confirm: true,
  cancel: true,
  'tell-brief': true,
  slower: true,
  faster: true,
  'ears-off': true,
  'ears-on': true,
  'carry-on': true,
  'begin-procedure': true,
  'open-job': true,
  'show-around': true,
  'show-bench': true,
  'show-record': true,
  'show-jobs': true,
  'show-procedures': true,
  'show-setup': true,
  'show-card': true,
};

const isAnswered = (c: Command): c is Command<Answered> => isRule(c.rule);
const isRule = (rule: RuleName): rule is Answered => Object.hasOwn(ANSWERED, rule);
