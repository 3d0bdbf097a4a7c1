import type { Measured, UnitName } from '../fastening/quantity';
import { LOG_CODES } from './log-codes';
import { PORCH_CODES } from './porch-codes';
import { SPOKEN_CODES } from './spoken-codes';
import { SUM_CODES } from './sum-codes';

/** A value put into a reply. How it is spoken and how it is shown are phrasing's business, by language. */
export type Said =
  /** Words from the document, spoken as they stand. */
  | { readonly kind: 'text'; readonly text: string }
  /** The same with what differs between languages in braces, by the names of `terms.ts`. */
  | { readonly kind: 'terms'; readonly text: string }
  | { readonly kind: 'count'; readonly value: number }
  /** A number read back digit by digit: "four zero", never "forty". */
  | { readonly kind: 'digits'; readonly value: number; readonly unit: UnitName | null }
  /** `printed` is what the manual prints; without it the value is written out by phrasing. */
  | { readonly kind: 'quantity'; readonly quantity: Figure }
  /** The same thing twice, as a person said it and in another unit. The second is shown, and said only where asked for. */
  | { readonly kind: 'both'; readonly first: Said; readonly second: Said; readonly isAloud: boolean }
  | { readonly kind: 'degrees'; readonly value: number }
  | { readonly kind: 'duration'; readonly ms: number }
  | { readonly kind: 'clock'; readonly hours: number }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  | { readonly kind: 'bolts'; readonly numbers: readonly number[] }
  | { readonly kind: 'replies'; readonly replies: readonly Reply[] };

/** A value with its unit, and the document's own spelling of it where there is one. */
export type Figure = Measured & { readonly printed?: string };

export const text = (t: string): Said => ({ kind: 'text', text: t });
export const terms = (t: string): Said => ({ kind: 'terms', text: t });
export const count = (value: number): Said => ({ kind: 'count', value });
export const degrees = (value: number): Said => ({ kind: 'degrees', value });
export const duration = (ms: number): Said => ({ kind: 'duration', ms });
export const list = (items: readonly string[]): Said => ({ kind: 'list', items });
export const bolts = (numbers: readonly number[]): Said => ({ kind: 'bolts', numbers });
export const quantity = (q: Figure): Said => ({ kind: 'quantity', quantity: q });
export const digits = (value: number, unit: UnitName | null = null): Said => ({ kind: 'digits', value, unit });
export const both = (first: Said, second: Said, isAloud: boolean): Said => ({ kind: 'both', first, second, isAloud });
export const clock = (hours: number): Said => ({ kind: 'clock', hours });
export const replies = (all: readonly Reply[]): Said => ({ kind: 'replies', replies: all });

/** Every reply there is and the slots its words may use. The words are in grammars/<language>/replies.yaml. */
export const REPLIES = { ...SPOKEN_CODES, ...PORCH_CODES, ...SUM_CODES, ...LOG_CODES };

export type ReplyCode = keyof typeof REPLIES;

export const isReplyCode = (code: string): code is ReplyCode => Object.hasOwn(REPLIES, code);

/** All codes, for checks and tables. */
export const REPLY_CODES: readonly ReplyCode[] = Object.keys(REPLIES).filter(isReplyCode);

type SlotOf<C extends ReplyCode> = (typeof REPLIES)[C][number];

export type Reply = { readonly code: ReplyCode; readonly slots: Readonly<Record<string, Said>> };

/** A reply with exactly the slots its code declares. */
export const reply = <C extends ReplyCode>(code: C, slots: Record<SlotOf<C>, Said>): Reply => ({ code, slots });

/** The reason of a sign-off by its id in the grammar; one the replies do not know is said as it stands. */
export function reason(id: string): Said {
  const code = `reason-${id}`;
  return isReplyCode(code) ? replies([{ code, slots: {} }]) : text(id);
}
