import type { CheckedJobFile, JobFileIssue } from '../../core/log/job-file';
import type { LogStore } from '../../core/log/log-store';
import type { Hash } from '../../core/ports';
import type { Brought, Imported, ImportFault } from '../../store/hand-over';
import type { PlainKey, Say } from '../../ui/words/words';
import { textOf } from '../file-text';
import { type Breathing, inPieces, partOf } from '../in-pieces';
import type { NoticeBoard } from '../notice-board';
import { damageWhy, openFaultWords, storeFaultWords } from './fault-words';
import { jobLogOfFile } from './job-log';
import type { Writing } from './writing';

/** The largest file taken, in megabytes: a long job with its clips and pictures stays far below. */
const MOST_MEGABYTES = 400;

/** How one job came off: taken, waiting for the person to choose, or refused in words. */
export type Took =
  | { readonly kind: 'taken'; readonly title: string; readonly outcome: Imported['outcome'] }
  | { readonly kind: 'waits' }
  | { readonly kind: 'refused'; readonly words: string };

type Fork = { readonly file: CheckedJobFile; readonly fault: Extract<ImportFault, { readonly code: 'forked' }> };

/** Takes in a file that holds more than one job. */
export type TakeAll = (
  root: unknown,
  name: string,
  takeJob: (job: unknown, at: string) => Promise<Took>,
  issueWords: (issue: JobFileIssue) => string,
) => Promise<void>;

/** How long the parts of it take, by a log of 20,000 entries: its seals are verified, it is understood, it is written. */
const VERIFIED = 0.55;
const UNDERSTOOD = 0.65;
const DECODED = 0.7;

const WORK = 'importing';

type Tell = (share: number) => void;

const OUTCOME = {
  new: 'import-new',
  extended: 'import-extended',
  same: 'import-same',
  behind: 'import-behind',
  'kept-here': 'import-kept-here',
  replaced: 'import-replaced',
} as const satisfies Record<Imported['outcome'], string>;

const FILE: Readonly<Partial<Record<JobFileIssue['code'], 'file-not-json' | 'file-not-a-job' | 'file-newer'>>> = {
  'not-json': 'file-not-json',
  'not-a-job-file': 'file-not-a-job',
  'newer-file': 'file-newer',
};

const FORK_ACTS = [
  ['fork-keep-here', 'here'],
  ['fork-take-file', 'file'],
] as const satisfies readonly (readonly [PlainKey, 'here' | 'file'])[];

/** Takes jobs over from files. A log that parted from the one here waits for the person to choose. */
export class JobImports {
  /** Asked about one after the other. */
  #forks: readonly Fork[] = [];
  /** Files that came while a fork waited for the person. */
  #waiting: readonly File[] = [];

  constructor(
    private readonly store: LogStore,
    private readonly hash: Hash,
    private readonly language: string,
    private readonly say: Say,
    private readonly notices: NoticeBoard,
    private readonly writing: Pick<Writing, 'isAllowed'>,
    /** A job that is open is left before its log is changed under it. */
    private readonly leave: (jobId: string) => Promise<void>,
    private readonly takeAll: TakeAll,
    private readonly breathing: Breathing,
  ) {}

  async take(file: File): Promise<void> {
    if (!this.writing.isAllowed()) return;
    if (this.#forks.length > 0) {
      this.#waiting = [...this.#waiting, file];
      this.notices.news('import', this.say('import-waits', { file: file.name }));
      return;
    }
    const text = await textOf(file, MOST_MEGABYTES, this.say, this.notices);
    if (text === null) return;
    const [{ readJson }, { isEverything }] = await Promise.all([
      import('../../core/log/job-file'),
      import('../../core/log/everything-file'),
    ]);
    const root = readJson(text);
    if (!root.ok) this.notices.trouble('file', this.#issueWords(file.name, root.error));
    else if (isEverything(root.value)) await this.#takeAll(root.value, file.name);
    else {
      const tell: Tell = (share) => this.notices.work(WORK, this.say('importing', { file: file.name }), share);
      this.#tell(await this.#takeOne(root.value, file.name, '', tell));
      this.notices.clear(WORK);
    }
  }

  async settle(keep: 'here' | 'file'): Promise<void> {
    const [fork, ...others] = this.#forks;
    this.#forks = others;
    this.notices.clear('fork');
    if (fork) this.#tell(await this.#import(fork.file, keep));
    this.#ask();
    if (others.length > 0) return;
    const waiting = this.#waiting;
    this.#waiting = [];
    for (const file of waiting) await this.take(file);
  }

  #takeAll(root: unknown, name: string): Promise<void> {
    return this.takeAll(
      root,
      name,
      // How far the whole file has come is told by whoever takes it apart.
      (job, at) => this.#takeOne(job, name, at, () => undefined),
      (issue) => this.#issueWords(name, [issue]),
    );
  }

  /** One job, `at` a place in its file. What is checked is the same wherever it came from. */
  async #takeOne(root: unknown, name: string, at: string, tell: Tell): Promise<Took> {
    const { checkingJobFile } = await import('../../core/log/job-file');
    const checked = await inPieces(checkingJobFile(root, this.hash), this.breathing, partOf(0, VERIFIED, tell));
    if (!checked.ok) {
      const issues = checked.error.map((issue) => ({ ...issue, at: `${at}${issue.at}` }));
      return { kind: 'refused', words: this.#issueWords(name, issues) };
    }
    // The seals hold; now whether this program can fold what they seal.
    const log = await jobLogOfFile(checked.value, this.language, (work) =>
      inPieces(work, this.breathing, partOf(VERIFIED, UNDERSTOOD, tell)),
    );
    if (!log.ok) return { kind: 'refused', words: openFaultWords(log.error, this.say) };
    const { damage } = log.value;
    if (damage) {
      const why = damageWhy(damage.why, this.say);
      return {
        kind: 'refused',
        words: this.say('file-log-broken', { file: `${name}${at}`, entry: damage.entry, why }),
      };
    }
    const { decoding } = await import('../../store/hand-over');
    const blobs = await inPieces(decoding(checked.value), this.breathing, partOf(UNDERSTOOD, DECODED, tell));
    await this.leave(checked.value.card.id);
    return this.#import(checked.value, 'ask', { blobs, tell: partOf(DECODED, 1, tell) });
  }

  async #import(file: CheckedJobFile, keep: 'ask' | 'here' | 'file', brought?: Brought): Promise<Took> {
    const { title, id } = file.card;
    const { importJob } = await import('../../store/hand-over');
    const imported = await importJob(this.store, file, keep, brought);
    if (imported.ok) return { kind: 'taken', title, outcome: imported.value.outcome };
    const fault = imported.error;
    if (fault.code !== 'forked') return { kind: 'refused', words: storeFaultWords(fault, this.say) };
    this.#forks = [...this.#forks.filter((fork) => fork.file.card.id !== id), { file, fault }];
    this.#ask();
    return { kind: 'waits' };
  }

  #tell(took: Took): void {
    if (took.kind === 'taken') this.notices.news('import', this.say(OUTCOME[took.outcome], { title: took.title }));
    if (took.kind === 'refused') this.notices.trouble('file', took.words);
  }

  #ask(): void {
    const [fork] = this.#forks;
    if (!fork) return;
    const { seq, here, file, jobId } = fork.fault;
    const text = this.say('import-forked', { title: fork.file.card.title, seq, here: here.seq, file: file.seq });
    this.notices.trouble('fork', text, [
      { label: this.say('save-copy'), event: { type: 'export', job: jobId, as: 'json' } },
      ...FORK_ACTS.map(([label, keep]) => ({ label: this.say(label), event: { type: 'settle-fork' as const, keep } })),
    ]);
  }

  /** The first of them: one is enough to know that the file must come again. */
  #issueWords(file: string, [issue]: readonly JobFileIssue[]): string {
    if (!issue) return '';
    if (issue.code === 'broken-log') {
      const why = damageWhy(issue.problem.code, this.say);
      return this.say('file-log-broken', { file: `${file} ${issue.at}`, entry: issue.good + 1, why });
    }
    if (issue.code === 'too-big') return this.say('file-too-big', { file, megabytes: MOST_MEGABYTES });
    const key = FILE[issue.code];
    return key
      ? this.say(key, { file })
      : this.say('file-broken', { file, place: issue.at === '' ? '/' : issue.at, given: issue.given });
  }
}
