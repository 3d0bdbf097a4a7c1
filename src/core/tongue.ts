import type { Job } from './job/job';
import { teachingOffers } from './job/teaching';
import type { LiveGrammar, Meaning, Offer, RuleBook } from './language/grammar';
import { interpret } from './language/interpret';
import { liveGrammar } from './language/live-grammar';
import { type BookIssue, ruleBook } from './language/rule-book';
import { type Lexicon, type LexiconIssue, parseLexicon } from './language/sounds/lexicon';
import type { Phone } from './language/sounds/sounds';
import { type WordsNow, wordsNow } from './language/words-now';
import type { LanguageProfile } from './language-profile';
import { type Breath, breathOf } from './phrasing/breath';
import { phraseAll } from './phrasing/phrase';
import type { Reply } from './phrasing/reply';
import { checkReplies, type ReplyBook, type ReplyIssue } from './phrasing/reply-book';
import { fail, ok, type Result } from './result';

/** The files of one language folder, as text; the YAML ones already parsed into plain data. */
export type TongueFiles = {
  readonly profile: LanguageProfile;
  readonly commands: string;
  readonly numbers: string;
  readonly lexicon: string;
  /** The names of its sounds: all that hearing needs of sounds.yaml. */
  readonly phones: readonly Phone[];
  readonly replies: unknown;
};

export type TongueIssue =
  | { readonly file: 'grammar'; readonly issue: BookIssue }
  | { readonly file: 'lexicon'; readonly issue: LexiconIssue }
  | { readonly file: 'replies'; readonly issue: ReplyIssue };

/** One language: what can be heard in it and what is said in it. */
export type Tongue = {
  readonly profile: LanguageProfile;
  readonly book: RuleBook;
  readonly lexicon: Lexicon;
  /** The acoustic model of the language: its folder, and the phones it knows. */
  readonly model: { readonly folder: string; readonly phones: readonly string[] };
  readonly replies: ReplyBook;
  readonly breath: Breath;
  /** Throws for an offer the grammar does not know: that is a bug of the program, not of the user. */
  readonly liveGrammar: (offers: readonly Offer[], revision: string) => LiveGrammar;
  readonly interpret: (live: LiveGrammar, words: string) => Meaning;
  readonly phrase: (replies: readonly Reply[]) => { readonly spoken: string; readonly shown: string };
  /** One sentence for each live command, by its rule. */
  readonly examples: (live: LiveGrammar) => ReadonlyMap<string, string>;
  /** The same for a job, with the numbers of this moment in the sentences. */
  readonly teaching: (job: Job) => ReadonlyMap<string, string>;
  /** The same as it is shown and told: what answers a read-back is left open. */
  readonly shown: (job: Job) => ReadonlyMap<string, string>;
};

export function tongueOf(files: TongueFiles): Result<Tongue, readonly TongueIssue[]> {
  const book = ruleBook([
    { file: 'commands.jsgf', text: files.commands },
    { file: 'numbers.jsgf', text: files.numbers },
  ]);
  const lexicon = parseLexicon(files.lexicon, files.phones);
  const replies = checkReplies(files.replies);
  if (!book.ok || !lexicon.ok || !replies.ok)
    return fail([
      ...(book.ok ? [] : book.error.map((issue) => ({ file: 'grammar' as const, issue }))),
      ...(lexicon.ok ? [] : lexicon.error.map((issue) => ({ file: 'lexicon' as const, issue }))),
      ...(replies.ok ? [] : replies.error.map((issue) => ({ file: 'replies' as const, issue }))),
    ]);
  const live = (offers: readonly Offer[], revision: string): LiveGrammar => {
    const made = liveGrammar(book.value, offers, revision);
    if (!made.ok) throw new Error(`offers the grammar does not know: ${JSON.stringify(made.error)}`);
    return made.value;
  };
  const examples = (of: LiveGrammar) => new Map(wordsNow(of).map(({ rule, example }) => [rule, example]));
  // The screen is drawn many times a second, and the sentences change only with the job.
  const taught = new WeakMap<Job, readonly WordsNow[]>();
  const wordsOf = (job: Job): readonly WordsNow[] => {
    const known = taught.get(job) ?? wordsNow(live(teachingOffers(job), 'teaching'));
    taught.set(job, known);
    return known;
  };
  return ok({
    profile: files.profile,
    book: book.value,
    lexicon: lexicon.value,
    model: { folder: files.profile.model, phones: files.phones },
    replies: replies.value,
    breath: breathOf(replies.value.words),
    liveGrammar: live,
    interpret,
    phrase: (all) => phraseAll(replies.value, all),
    examples,
    teaching: (job) => new Map(wordsOf(job).map(({ rule, example }) => [rule, example])),
    shown: (job) => new Map(wordsOf(job).map(({ rule, shown }) => [rule, shown])),
  });
}
