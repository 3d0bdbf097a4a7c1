import type { VNode } from 'preact';
import { expect, test } from 'vitest';
import { Progress } from '../../src/ui/progress';

type Drawn = VNode<{ readonly children?: unknown; readonly [name: string]: unknown }>;

const partsOf = (drawn: Drawn): readonly Drawn[] => [drawn.props.children].flat() as readonly Drawn[];

test.each([
  [0.4, 0.4],
  [0, 0],
  [null, undefined],
])('a share of %s is drawn as the browser bar of that value, named by the words around it', (share, value) => {
  const label: Drawn = Progress({ says: 'Taking over job.json.', share });
  expect(label.type).toBe('label');
  const [words, bar] = partsOf(label);
  expect(words?.props.children).toBe('Taking over job.json.');
  expect(bar?.type).toBe('progress');
  expect(bar?.props).toMatchObject({ max: 1 });
  expect(bar?.props.value).toBe(value);
});
