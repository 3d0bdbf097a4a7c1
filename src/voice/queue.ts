import type { SpeechRequest } from '../core/ports';

/** Who is speaking and who waits. Each request leaves exactly once: it is finished, or it is told it was cut. */
export type Queue = { readonly saying: SpeechRequest | null; readonly waiting: readonly SpeechRequest[] };

export type Turn = {
  readonly queue: Queue;
  /** Requests that will never be finished, the one being spoken first. */
  readonly cut: readonly SpeechRequest[];
};

export const SILENT_QUEUE: Queue = { saying: null, waiting: [] };

/**
 * The interrupt rule. Urgent cuts what is being said unless that is urgent too: one warning never hides another.
 * Normal waits its turn, and cuts idle talk, because somebody is waiting for the answer. Idle is for a silence only.
 * What was waiting keeps its order, urgent before normal.
 */
export function asked(queue: Queue, request: SpeechRequest): Turn {
  const { saying } = queue;
  if (request.priority === 'idle' && (saying !== null || queue.waiting.length > 0)) return { queue, cut: [request] };

  const waiting = queue.waiting.filter(({ priority }) => priority !== 'idle');
  const dropped = queue.waiting.filter(({ priority }) => priority === 'idle');
  const behind = waiting.findIndex(({ priority }) => rank(priority) > rank(request.priority));
  const ordered = waiting.toSpliced(behind < 0 ? waiting.length : behind, 0, request);

  if (saying !== null && interrupts(request, saying)) {
    return { queue: { saying: null, waiting: ordered }, cut: [saying, ...dropped] };
  }
  return { queue: { saying, waiting: ordered }, cut: dropped };
}

/** The next in line, once nobody is speaking. */
export function begun(queue: Queue): Queue {
  const [next, ...rest] = queue.waiting;
  return queue.saying === null && next !== undefined ? { saying: next, waiting: rest } : queue;
}

/** The one speaking has said all of it. */
export const finished = (queue: Queue): Queue => ({ ...queue, saying: null });

/** Stop: nothing is said and nothing waits. */
export function hushed({ saying, waiting }: Queue): Turn {
  return { queue: SILENT_QUEUE, cut: saying === null ? waiting : [saying, ...waiting] };
}

type Priority = SpeechRequest['priority'];

function interrupts(request: SpeechRequest, saying: SpeechRequest): boolean {
  return (
    rank(request.priority) < rank(saying.priority) && (request.priority === 'urgent' || saying.priority === 'idle')
  );
}

const RANK: Readonly<Record<Priority, number>> = { urgent: 0, normal: 1, idle: 2 };
const rank = (priority: Priority): number => RANK[priority];
