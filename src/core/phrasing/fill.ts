import type { Template } from './template';

/** The text for a slot, its noun included. */
export type Fill = (part: Template[number] & { readonly kind: 'slot' }) => string;

/**
 * Puts values into a template. Stops are not doubled, what is empty leaves no gap, and a sentence begins with a
 * capital. A template without a stop at its end is a name to be put into another, and begins as it is written.
 * Stops alone say nothing.
 */
export function fill(template: Template, value: Fill): string {
  const text = build(template, value, '').trim();
  if (!/[\p{L}\d]/u.test(text)) return '';
  return isSentence(template) ? capital(text) : text;
}

function isSentence(template: Template): boolean {
  const last = template.at(-1);
  return last?.kind === 'words' && /[.?!]”?$/.test(last.text);
}

function build(template: Template, value: Fill, before: string): string {
  let text = before;
  for (const part of template) {
    switch (part.kind) {
      case 'words':
        text = seam(text, part.text);
        break;
      case 'slot': {
        const filled = value(part);
        text = seam(text, endsSentence(text) ? capital(filled) : filled);
        break;
      }
      case 'optional':
        if (isFull(part.parts, value)) text = build(part.parts, value, text);
        break;
    }
  }
  return text;
}

const isFull = (template: Template, value: Fill): boolean =>
  template.every((part) => part.kind !== 'slot' || value(part) !== '');

/** Joins two pieces of which both may bring a stop: a question or exclamation wins, else the later one. */
function seam(left: string, right: string): string {
  if (!/^[.,;:?!]/.test(right)) return left + right;
  const bare = left.trimEnd();
  if (/[?!]$/.test(bare)) return bare + right.slice(1);
  return bare.replace(/[.,;:]+$/, '') + right;
}

const endsSentence = (text: string): boolean => /[.?!]\s*$/.test(text);

/** With a capital first letter; figures and signs stay as they are. */
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
