import { fail, ok, type Result } from '../result';

/** The words of one reply with places for its values. */
export type Template = readonly TemplatePart[];

export type TemplatePart =
  | { readonly kind: 'words'; readonly text: string }
  /** `noun` follows a count in the right number: `{left bolt|bolts}` is "three bolts", "one bolt", "no bolts". */
  | { readonly kind: 'slot'; readonly slot: string; readonly noun: Noun | null }
  /** Left out whole when a value inside it is empty. */
  | { readonly kind: 'optional'; readonly parts: Template };

export type Noun = { readonly one: string; readonly many: string };

/** The piece of the text that is at fault. */
export type TemplateFault = { readonly code: 'bracket-open' | 'bracket-nested' | 'bad-slot'; readonly given: string };

const SLOT = /^([a-z][a-z-]*)(?: ([^|]+)\|([^|]+))?$/;

/** Reads `Bolt {bolt}[, {where}].`: braces hold a slot, square brackets what may be left out. */
export function parseTemplate(text: string): Result<Template, TemplateFault> {
  const parts: TemplatePart[] = [];
  let inside: TemplatePart[] | null = null;
  for (const token of text.match(/\{[^{}]*\}|[^{}[\]]+|./gs) ?? []) {
    const into: TemplatePart[] = inside ?? parts;
    if (token === '[') {
      if (inside) return fail({ code: 'bracket-nested', given: text });
      inside = [];
    } else if (token === ']') {
      if (!inside) return fail({ code: 'bracket-open', given: text });
      parts.push({ kind: 'optional', parts: inside });
      inside = null;
    } else if (token.startsWith('{') || token === '}') {
      const slot = parseSlot(token);
      if (!slot) return fail({ code: 'bad-slot', given: token });
      into.push(slot);
    } else {
      into.push({ kind: 'words', text: token });
    }
  }
  return inside ? fail({ code: 'bracket-open', given: text }) : ok(parts);
}

function parseSlot(token: string): TemplatePart | undefined {
  const match = SLOT.exec(token.slice(1, -1));
  if (!match) return undefined;
  const [, slot = '', one, many] = match;
  return { kind: 'slot', slot, noun: one !== undefined && many !== undefined ? { one, many } : null };
}

export const slotsOf = (template: Template): readonly string[] =>
  template.flatMap((part) =>
    part.kind === 'slot' ? [part.slot] : part.kind === 'optional' ? slotsOf(part.parts) : [],
  );

/** All that the template itself says, its nouns included, without the values. */
export const wordsOfTemplate = (template: Template): readonly string[] =>
  template.flatMap((part) => {
    if (part.kind === 'words') return [part.text];
    if (part.kind === 'optional') return wordsOfTemplate(part.parts);
    return part.noun ? [part.noun.one, part.noun.many] : [];
  });
