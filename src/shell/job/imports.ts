import type { JobFileIssue } from '../../core/log/job-file';
import type { LogStore } from '../../core/log/log-store';
import type { Hash } from '../../core/ports';
import type { Imported, ImportFault } from '../../store/hand-over';
import type { PlainKey, Say } from '../../ui/words/words';
import { textOf } from '../file-text';
import type { NoticeBoard } from '../notice-board';
import { damageWhy, openFaultWords, storeFaultWords } from './fault-words';
import { jobLogOf } from './job-log';
import type { Writing } from './writing';

/** The largest file taken, in megabytes: a long job with its clips and pictures stays far below. */
const MOST_MEGABYTES = 400;

type Fork = { readonly text: string; readonly name: string; readonly title: string };

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
  #fork: Fork | null = null;
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
  ) {}

  async take(file: File): Promise<void> {
    if (!this.writing.isAllowed()) return;
    if (this.#fork) {
      this.#waiting = [...this.#waiting, file];
      this.notices.news('import', this.say('import-waits', { file: file.name }));
      return;
    }
    const text = await textOf(file, MOST_MEGABYTES, this.say, this.notices);
    if (text === null) return;
    const { parseJobFile } = await import('../../core/log/job-file');
    const checked = parseJobFile(text, this.hash);
    if (!checked.ok) {
      this.#refuse(file.name, checked.error);
      return;
    }
    const { card, head, texts } = checked.value;
    // The seals hold; now whether this program can fold what they seal.
    const log = await jobLogOf({ card, head, texts }, this.hash, this.language);
    if (!log.ok) {
      this.notices.trouble('file', openFaultWords(log.error, this.say));
      return;
    }
    const { damage } = log.value;
    if (damage) {
      const why = damageWhy(damage.why, this.say);
      this.notices.trouble('file', this.say('file-log-broken', { file: file.name, entry: damage.entry, why }));
      return;
    }
    await this.leave(card.id);
    await this.#import({ text, name: file.name, title: card.title }, 'ask');
  }

  async settle(keep: 'here' | 'file'): Promise<void> {
    const fork = this.#fork;
    this.#fork = null;
    this.notices.clear('fork');
    if (fork) await this.#import(fork, keep);
    const waiting = this.#waiting;
    this.#waiting = [];
    for (const file of waiting) await this.take(file);
  }

  async #import(fork: Fork, keep: 'ask' | 'here' | 'file'): Promise<void> {
    const { title } = fork;
    const { importJob } = await import('../../store/hand-over');
    const imported = await importJob(this.store, fork.text, this.hash, keep);
    if (imported.ok) this.notices.news('import', this.say(OUTCOME[imported.value.outcome], { title }));
    else this.#tell(imported.error, fork);
  }

  #tell(fault: ImportFault, fork: Fork): void {
    if (fault.code === 'bad-file') this.#refuse(fork.name, fault.issues);
    else if (fault.code === 'forked') this.#ask(fault, fork);
    else this.notices.trouble('file', storeFaultWords(fault, this.say));
  }

  #ask(fault: Extract<ImportFault, { readonly code: 'forked' }>, fork: Fork): void {
    this.#fork = fork;
    const { seq, here, file, jobId } = fault;
    const text = this.say('import-forked', { title: fork.title, seq, here: here.seq, file: file.seq });
    this.notices.trouble('fork', text, [
      { label: this.say('save-copy'), event: { type: 'export', job: jobId, as: 'json' } },
      ...FORK_ACTS.map(([label, keep]) => ({ label: this.say(label), event: { type: 'settle-fork' as const, keep } })),
    ]);
  }

  #refuse(file: string, issues: readonly JobFileIssue[]): void {
    const [issue] = issues;
    if (issue) this.notices.trouble('file', this.#issueWords(file, issue));
  }

  #issueWords(file: string, issue: JobFileIssue): string {
    if (issue.code === 'broken-log')
      return this.say('file-log-broken', { file, entry: issue.good + 1, why: damageWhy(issue.problem.code, this.say) });
    if (issue.code === 'too-big') return this.say('file-too-big', { file, megabytes: MOST_MEGABYTES });
    const key = FILE[issue.code];
    return key
      ? this.say(key, { file })
      : this.say('file-broken', { file, place: issue.at === '' ? '/' : issue.at, given: issue.given });
  }
}
