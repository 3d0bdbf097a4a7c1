import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { SpeechRequest } from '../../src/core/ports';
import { asked, begun, finished, hushed, type Queue, SILENT_QUEUE } from '../../src/voice/queue';

/** `u1` is an urgent request, `n2` a normal one, `i3` an idle one. */
function request(id: string): SpeechRequest {
  const priority = ({ u: 'urgent', n: 'normal', i: 'idle' } as const)[id.charAt(0)];
  if (priority === undefined) throw new Error(`no such priority: ${id}`);
  return { id, text: id, priority };
}

function queueOf(saying: string | null, waiting: readonly string[]): Queue {
  return { saying: saying === null ? null : request(saying), waiting: waiting.map(request) };
}

describe('asking', () => {
  test.each([
    { rule: 'nothing is said', saying: null, waiting: [], ask: 'n1', turn: [null, ['n1'], []] },
    { rule: 'normal waits its turn', saying: 'n1', waiting: ['n2'], ask: 'n3', turn: ['n1', ['n2', 'n3'], []] },
    { rule: 'normal waits behind urgent', saying: 'u1', waiting: ['u2'], ask: 'n3', turn: ['u1', ['u2', 'n3'], []] },
    { rule: 'urgent cuts normal', saying: 'n1', waiting: [], ask: 'u2', turn: [null, ['u2'], ['n1']] },
    {
      rule: 'urgent goes before what waits',
      saying: 'n1',
      waiting: ['n2'],
      ask: 'u3',
      turn: [null, ['u3', 'n2'], ['n1']],
    },
    { rule: 'urgent never cuts urgent', saying: 'u1', waiting: ['n2'], ask: 'u3', turn: ['u1', ['u3', 'n2'], []] },
    {
      rule: 'urgents keep their order',
      saying: 'u1',
      waiting: ['u2', 'n3'],
      ask: 'u4',
      turn: ['u1', ['u2', 'u4', 'n3'], []],
    },
    { rule: 'normal cuts idle talk', saying: 'i1', waiting: [], ask: 'n2', turn: [null, ['n2'], ['i1']] },
    { rule: 'urgent cuts idle talk', saying: 'i1', waiting: [], ask: 'u2', turn: [null, ['u2'], ['i1']] },
    { rule: 'idle speaks into silence', saying: null, waiting: [], ask: 'i1', turn: [null, ['i1'], []] },
    { rule: 'idle is dropped while another speaks', saying: 'n1', waiting: [], ask: 'i2', turn: ['n1', [], ['i2']] },
    { rule: 'idle is dropped behind idle', saying: 'i1', waiting: [], ask: 'i2', turn: ['i1', [], ['i2']] },
    { rule: 'waiting idle gives way', saying: null, waiting: ['i1'], ask: 'n2', turn: [null, ['n2'], ['i1']] },
  ] as const)('$rule', ({ saying, waiting, ask, turn: [nowSaying, nowWaiting, cut] }) => {
    expect(asked(queueOf(saying, waiting), request(ask))).toEqual({
      queue: queueOf(nowSaying, nowWaiting),
      cut: cut.map(request),
    });
  });
});

describe('turns', () => {
  test.each([
    { rule: 'the first in line speaks', saying: null, waiting: ['u1', 'n2'], turn: ['u1', ['n2']] },
    { rule: 'nobody speaks over another', saying: 'n1', waiting: ['n2'], turn: ['n1', ['n2']] },
    { rule: 'silence stays silence', saying: null, waiting: [], turn: [null, []] },
  ] as const)('$rule', ({ saying, waiting, turn: [nowSaying, nowWaiting] }) => {
    expect(begun(queueOf(saying, waiting))).toEqual(queueOf(nowSaying, nowWaiting));
  });

  test('what is finished leaves its place', () => {
    expect(finished(queueOf('n1', ['n2']))).toEqual(queueOf(null, ['n2']));
  });

  test('stop cuts what is said, urgent too, and forgets what waits', () => {
    expect(hushed(queueOf('u1', ['u2', 'n3']))).toEqual({ queue: SILENT_QUEUE, cut: ['u1', 'u2', 'n3'].map(request) });
  });
});

test('whatever is asked in whatever order, each request leaves exactly once', () => {
  const moves = fc.array(fc.constantFrom('u', 'n', 'i', 'begin', 'finish', 'hush'), { maxLength: 40 });
  fc.assert(
    fc.property(moves, (all) => {
      let queue = SILENT_QUEUE;
      const given: string[] = [];
      const left: string[] = [];
      const follow = (turn: { queue: Queue; cut: readonly SpeechRequest[] }) => {
        queue = turn.queue;
        left.push(...turn.cut.map(({ id }) => id));
      };
      for (const [i, move] of [...all, 'hush'].entries()) {
        if (move === 'begin') queue = begun(queue);
        else if (move === 'hush') follow(hushed(queue));
        else if (move === 'finish') {
          if (queue.saying !== null) left.push(queue.saying.id);
          queue = finished(queue);
        } else {
          given.push(`${move}${i}`);
          follow(asked(queue, request(`${move}${i}`)));
        }
      }
      expect(left.toSorted()).toEqual(given.toSorted());
    }),
  );
});
