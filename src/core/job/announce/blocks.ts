import { bolts, count, duration, type Reply, replies, reply, text } from '../../phrasing/reply';
import { assertNever } from '../../result';
import type { Block } from '../blocks';
import { openEnds } from './ends';

/** More names in a row than these are not kept in mind; the rest is counted, and stands on the screen. */
const NAMED = 2;

type Of<K extends Block['kind']> = Extract<Block, { readonly kind: K }>;

/** What blocks closing, as it is said: counts, and the first few by name. */
export function blocksTold(blocks: readonly Block[]): readonly Reply[] {
  const of = <K extends Block['kind']>(kind: K) => blocks.filter((b): b is Of<K> => b.kind === kind);
  const bolted = (is: Of<'bolts'>['is']) => [
    ...new Set(of('bolts').flatMap((block) => (block.is === is ? block.bolts : []))),
  ];
  const [held, unknown, steps, ends] = [bolted('held'), bolted('unknown'), of('steps'), of('end')];
  const [firstPhase] = steps;
  const first = openEnds(ends.slice(0, NAMED).map(({ end }) => end));
  const left = steps.reduce((sum, phase) => sum + phase.left, 0);
  return [
    reply('close-refused', {}),
    ...(of('question').length > 0 ? [reply('blocks-question', {})] : []),
    ...(held.length > 0 ? [reply('blocks-held', { bolts: bolts(held) })] : []),
    ...(unknown.length > 0 ? [reply('blocks-unknown', { bolts: bolts(unknown) })] : []),
    ...(firstPhase ? [reply('blocks-steps', { left: count(left), phase: text(firstPhase.phase) })] : []),
    ...endsTold(ends.length, first),
    ...waitsTold(of('timer')),
  ];
}

function endsTold(all: number, first: ReturnType<typeof replies>): readonly Reply[] {
  if (all === 0) return [];
  return all > NAMED
    ? [reply('blocks-ends', { left: count(all), ends: first })]
    : [reply('loose-ends', { ends: first })];
}

const waitsTold = (timers: readonly Of<'timer'>[]): readonly Reply[] => [
  ...(timers.length > NAMED ? [reply('blocks-waits', { left: count(timers.length) })] : []),
  ...timers
    .slice(0, NAMED)
    .map(({ say, leftMs }) => reply('timer-running', { timer: text(say), left: duration(leftMs) })),
];

/** One of them as a line of the list on the screen. */
export function blockLine(block: Block): Reply {
  switch (block.kind) {
    case 'question':
      return reply('shown-question', {});
    case 'bolts':
      return reply(block.is === 'held' ? 'shown-held' : 'shown-doubt', {
        step: text(block.step),
        bolts: bolts(block.bolts),
      });
    case 'steps':
      return reply('shown-steps', { phase: text(block.phase), left: count(block.left) });
    case 'end':
      return reply('shown-end', {
        what: openEnds([block.end]),
        milestone: replies([reply(`milestone-${block.end.blocks}`, {})]),
      });
    case 'timer':
      return reply('shown-wait', { timer: text(block.say), left: duration(block.leftMs) });
    default:
      return assertNever(block);
  }
}
