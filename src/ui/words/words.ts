import { fail, ok, type Result } from '../../core/result';
import { BENCH_WORDS } from './bench-words';
import { CARD_WORDS } from './card-words';
import { EAR_WORDS } from './ear-words';
import { JOB_WORDS } from './job-words';
import { LINE_WORDS } from './line-words';
import { NOTICE_WORDS } from './notice-words';
import { PROCEDURE_WORDS } from './procedure-words';
import { RECORD_WORDS } from './record-words';
import { SETUP_WORDS } from './setup-words';
import { SHELL_WORDS } from './shell-words';
import { TABLE_WORDS } from './table-words';
import { TAP_WORDS } from './tap-words';

/** Every text of the screens and the slots it may use. The texts are in grammars/<language>/screen.yaml. */
export const SCREEN_WORDS = {
  ...SHELL_WORDS,
  ...BENCH_WORDS,
  ...EAR_WORDS,
  ...RECORD_WORDS,
  ...JOB_WORDS,
  ...LINE_WORDS,
  ...PROCEDURE_WORDS,
  ...CARD_WORDS,
  ...SETUP_WORDS,
  ...NOTICE_WORDS,
  ...TABLE_WORDS,
  ...TAP_WORDS,
} as const;

export type ScreenKey = keyof typeof SCREEN_WORDS;
export type ScreenWords = Readonly<Record<ScreenKey, string>>;

type SlotOf<K extends ScreenKey> = (typeof SCREEN_WORDS)[K][number];
type Slots<K extends ScreenKey> = [SlotOf<K>] extends [never] ? [] : [Readonly<Record<SlotOf<K>, string | number>>];

/** A key without slots: what tables of labels may hold. */
export type PlainKey = { readonly [K in ScreenKey]: [SlotOf<K>] extends [never] ? K : never }[ScreenKey];

export type Say = <K extends ScreenKey>(key: K, ...slots: Slots<K>) => string;

export type ScreenWordsIssue =
  | { readonly code: 'not-a-map' }
  | { readonly code: 'missing-text'; readonly key: string }
  | { readonly code: 'unknown-text'; readonly key: string }
  | { readonly code: 'not-text'; readonly key: string }
  | { readonly code: 'unknown-slot'; readonly key: string; readonly slot: string }
  | { readonly code: 'unused-slot'; readonly key: string; readonly slot: string };

const SLOT = /\{([a-z]+)\}/g;

const slotsIn = (template: string): readonly string[] => [...template.matchAll(SLOT)].map((m) => m[1] ?? '');

/** The screen texts of one language, from the parsed file: every key there, none besides, each with its own slots. */
export function checkScreenWords(raw: unknown): Result<ScreenWords, readonly ScreenWordsIssue[]> {
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) return fail([{ code: 'not-a-map' }]);
  const given: ReadonlyMap<string, unknown> = new Map(Object.entries(raw));
  const known: ReadonlyMap<string, readonly string[]> = new Map(Object.entries(SCREEN_WORDS));
  const issues: ScreenWordsIssue[] = [];
  for (const key of given.keys()) if (!known.has(key)) issues.push({ code: 'unknown-text', key });
  for (const [key, slots] of known) {
    const template = given.get(key);
    if (template === undefined) issues.push({ code: 'missing-text', key });
    else if (typeof template !== 'string' || template.trim() === '') issues.push({ code: 'not-text', key });
    else {
      const used = slotsIn(template);
      for (const slot of used) if (!slots.includes(slot)) issues.push({ code: 'unknown-slot', key, slot });
      for (const slot of slots) if (!used.includes(slot)) issues.push({ code: 'unused-slot', key, slot });
    }
  }
  // The loop above has seen every key with a text.
  return issues.length > 0 ? fail(issues) : ok(Object.fromEntries(given) as ScreenWords);
}
