import { type Mend, mend } from '../mend';
import { fail, ok, type Result } from '../result';
import { Field } from './field';
import { readSpeechWords, WORD_SECTIONS } from './read-speech-words';
import { isReplyCode, REPLIES, REPLY_CODES, type ReplyCode } from './reply';
import type { ReplyIssue } from './reply-issue';
import type { SpeechWords } from './speech-words';
import { parseTemplate, slotsOf, type Template, wordsOfTemplate } from './template';

export type { ReplyIssue, ReplyIssueCode } from './reply-issue';

/** The words of one reply; the same template twice unless the file gives two. */
export type ReplyWords = { readonly say: Template; readonly show: Template };

/** All that a language says: made only by `checkReplies`. */
export type ReplyBook = {
  readonly language: string;
  readonly replies: Readonly<Record<ReplyCode, ReplyWords>>;
  readonly words: SpeechWords;
};

/**
 * Checks the plain data of a replies file. Every code has its words and there are no others; each place names a slot
 * of its code, and each slot is used unless the entry lists it under `unused`. All issues are collected.
 */
export function checkReplies(raw: unknown): Result<ReplyBook, readonly ReplyIssue[]> {
  const issues: ReplyIssue[] = [];
  const file = Field.root(raw, issues).only(['language', 'replies', ...WORD_SECTIONS]);
  const language = file.key('language').text();
  const entries = file.key('replies');
  for (const code of entries.keys())
    if (!isReplyCode(code)) entries.key(code).blame('unknown-reply', mend('remove-or-correct'), code);
  const read = REPLY_CODES.flatMap((code) => {
    if (entries.has(code)) return [[code, readReply(entries.key(code), REPLIES[code])] as const];
    entries.blame('missing-reply', mend('add-reply', code), code);
    return [];
  });
  const words = readSpeechWords(file);
  if (issues.length > 0) return fail(issues);
  // fromEntries forgets which keys there are; without an issue every code is in.
  return ok({ language, replies: Object.fromEntries(read) as Record<ReplyCode, ReplyWords>, words });
}

function readReply(entry: Field, slots: readonly string[]): ReplyWords {
  if (entry.isText) {
    const both = readTemplate(entry, slots, []);
    checkSpeakable(entry, both);
    return { say: both, show: both };
  }
  entry.only(['say', 'show', 'unused']);
  const unused = entry.has('unused') ? entry.key('unused').texts() : [];
  for (const slot of unused)
    if (!slots.includes(slot)) entry.key('unused').blame('unknown-slot', mendSlots(slots), slot);
  const say = readTemplate(entry.key('say'), slots, unused);
  checkSpeakable(entry.key('say'), say);
  return { say, show: entry.has('show') ? readTemplate(entry.key('show'), slots, unused) : say };
}

function readTemplate(field: Field, slots: readonly string[], unused: readonly string[]): Template {
  const parsed = parseTemplate(field.text());
  if (!parsed.ok) {
    field.blame('bad-template', mend(parsed.error.code), parsed.error.given);
    return [];
  }
  const used = slotsOf(parsed.value);
  for (const slot of used) if (!slots.includes(slot)) field.blame('unknown-slot', mendSlots(slots), slot);
  for (const slot of slots)
    if (!used.includes(slot) && !unused.includes(slot)) field.blame('unused-slot', mend('use-or-unused', slot), slot);
  return parsed.value;
}

const mendSlots = (slots: readonly string[]): Mend =>
  slots.length > 0 ? mend('its-slots', slots.join(', ')) : mend('no-slots');

/** Figures and signs are read out wrongly or not at all; quotation marks are left out of the speech. */
function checkSpeakable(field: Field, template: Template): void {
  const text = wordsOfTemplate(template).join('');
  const astray = /[^\p{L}\p{M} \u00a0.,;:?!'’“”«»]/u.exec(text)?.[0];
  if (astray !== undefined) field.blame('not-speakable', mend('in-words'), astray);
}
