import { type Document, isMap, isNode, isScalar, isSeq, type Node } from 'yaml';
import type { Path } from '../issue';

export type Position = { readonly line: number; readonly column: number };

/** Finds the place of a path in a document: its value, or its key when asked, or else the nearest thing that holds it. */
export function locator(document: Document, position: (offset: number) => Position) {
  return (path: Path, onKey = false): Position => {
    let node: unknown = document.contents;
    let offset = offsetOf(node) ?? 0;
    path.forEach((part, index) => {
      const step = descend(node, part);
      const wantKey = onKey && index === path.length - 1;
      const found = wantKey
        ? (offsetOf(step.key) ?? offsetOf(step.value))
        : (offsetOf(step.value) ?? offsetOf(step.key));
      offset = found ?? offset;
      node = step.value;
    });
    return position(offset);
  };
}

function descend(node: unknown, part: string | number): { readonly key: unknown; readonly value: unknown } {
  if (isMap(node)) {
    const pair = node.items.find(({ key }) => isScalar(key) && String(key.value) === String(part));
    if (pair !== undefined) return pair;
  }
  if (isSeq(node) && typeof part === 'number') return { key: undefined, value: node.items[part] };
  return { key: undefined, value: undefined };
}

const offsetOf = (node: unknown): number | undefined => (isNode(node) ? rangeStart(node) : undefined);
const rangeStart = (node: Node): number | undefined => node.range?.[0];
