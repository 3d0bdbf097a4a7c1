import { z } from 'zod';
import { document } from '../../core/procedure/document/document';
import { HINTS } from './hints';

/** The shape of a procedure document as JSON Schema (draft 2020-12) text, for completion and hints in editors. */
export function editorSchema(): string {
  const used = new Set<string>();
  const schema = hinted(z.toJSONSchema(document, { io: 'input' }), '', used);
  const idle = Object.keys(HINTS).filter((place) => !used.has(place));
  if (idle.length > 0) throw new Error(`the document has no such places: ${idle.join(', ')}`);
  return `${JSON.stringify({ title: 'Wrenchside procedure document, format 1', ...schema }, null, 2)}\n`;
}

type Node = Readonly<Record<string, unknown>>;

/** The same schema with the hint of every place that has one. */
function hinted(node: Node, place: string, used: Set<string>): Node {
  const into = (inner: unknown, at: string): unknown => (isNode(inner) ? hinted(inner, at, used) : inner);
  const each = (inner: unknown, at: (key: string) => string): unknown =>
    isNode(inner)
      ? Object.fromEntries(Object.entries(inner).map(([key, value]) => [key, into(value, at(key))]))
      : inner;
  const oneOf = (all: unknown): unknown =>
    Array.isArray(all) ? all.map((one: unknown) => into(one, `${place}|${kindOf(one)}`)) : all;
  const inside: Readonly<Record<string, (value: unknown) => unknown>> = {
    properties: (value) => each(value, (key) => (place === '' ? key : `${place} ${key}`)),
    $defs: (value) => each(value, (key) => `#${key}`),
    items: (value) => into(value, `${place}[]`),
    additionalProperties: (value) => into(value, `${place}*`),
    anyOf: oneOf,
    oneOf,
  };
  const hint = hintAt(place, used);
  const own = Object.entries(node).map(([key, value]) => [key, inside[key]?.(value) ?? value] as const);
  return { ...(hint !== undefined && { description: hint }), ...Object.fromEntries(own) };
}

/** The hint of a place; where no alternative has its own, that of any. */
function hintAt(place: string, used: Set<string>): string | undefined {
  const found = [place, place.replaceAll(/\|[a-z-]+/g, '|')].find((one) => one in HINTS);
  if (found === undefined) return undefined;
  used.add(found);
  return HINTS[found];
}

const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null && !Array.isArray(value);

/** The kind of an alternative that names one. */
function kindOf(one: unknown): string {
  const properties = isNode(one) && isNode(one['properties']) ? one['properties'] : {};
  const kind = properties['kind'];
  return isNode(kind) && typeof kind['const'] === 'string' ? kind['const'] : '';
}
