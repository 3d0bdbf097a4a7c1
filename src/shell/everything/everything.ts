import { printEverything, readEverything } from '../../core/log/everything-file';
import { type JobFileIssue, LONGEST_FILE } from '../../core/log/job-file';
import type { LogStore } from '../../core/log/log-store';
import type { Settings } from '../../ui/setup/settings';
import type { Say } from '../../ui/words/words';
import { storeFaultWords } from '../job/fault-words';
import type { Took } from '../job/imports';
import type { OpenJob } from '../job/job-desk';
import type { Library } from '../library';
import type { NoticeBoard } from '../notice-board';
import type { Exports, Save } from '../record/exports';
import { readShelf } from '../setup/voice-shelf';
import { portable, withPortable } from './portable-settings';
import { takeProcedures } from './take-procedures';
import { takeVoices } from './take-voices';

/** How far it has come, 0 to 1. */
export type OnShare = (share: number) => void;

type EverythingHost = {
  readonly store: LogStore;
  /** UTC wall time in ms. */
  readonly now: () => number;
  readonly save: Save;
  readonly library: Pick<Library, 'own' | 'take'>;
  readonly settings: () => Settings;
  /** Uses and keeps them. */
  readonly change: (settings: Settings) => Promise<void>;
  readonly exports: () => Promise<Pick<Exports, 'textOf'>>;
  readonly say: Say;
  readonly notices: NoticeBoard;
};

/** All that a person has on this machine in one file, and such a file taken in. */
export class Everything {
  constructor(private readonly at: EverythingHost) {}

  /** Writes the file. A job that cannot be read is told of, and does not keep the others back. */
  async save(open: OpenJob | null, onShare: OnShare): Promise<void> {
    const { store, now, save, library, settings, exports, say, notices } = this.at;
    const rows = await store.jobs();
    if (!rows.ok) {
      notices.trouble('export', storeFaultWords(rows.error, say));
      return;
    }
    const jobs: string[] = [];
    const left: string[] = [];
    for (const [index, { card }] of rows.value.entries()) {
      onShare(index / rows.value.length);
      const text = await (await exports()).textOf(card.id, open);
      if (text.ok) jobs.push(text.value);
      else left.push(say('everything-refused', { title: card.title, why: storeFaultWords(text.error, say) }));
    }
    onShare(1);
    const { profiles } = await readShelf(store);
    const parts = printEverything(now(), {
      jobs,
      procedures: library.own,
      settings: portable(settings()),
      voices: profiles,
    });
    if (parts.reduce((sum, part) => sum + part.length, 0) > LONGEST_FILE) {
      notices.trouble('export', say('everything-too-big', { megabytes: LONGEST_FILE / 1e6 }));
      return;
    }
    const file = `wrenchside-${new Date(now()).toISOString().slice(0, 10)}.json`;
    save(file, parts, 'application/json');
    if (left.length > 0) notices.trouble('export', say('everything-left', { what: left.join(' ') }));
    else notices.clear('export');
    const counts = { jobs: jobs.length, procedures: library.own.length, voices: profiles.length };
    notices.news('everything', say('everything-saved', { file, ...counts }));
  }

  /** Takes in whatever of the file can be taken; `takeJob` does so with one job, by its place in the file. Nothing here is overwritten. */
  async take(
    root: unknown,
    name: string,
    takeJob: (job: unknown, at: string) => Promise<Took>,
    issueWords: (issue: JobFileIssue) => string,
    onShare: OnShare,
  ): Promise<void> {
    const { store, library, settings, change, say, notices } = this.at;
    const file = readEverything(root);
    if (!file.ok) {
      notices.trouble('file', issueWords(file.error));
      return;
    }
    const left: string[] = [];
    let jobs = 0;
    for (const [index, job] of file.value.jobs.entries()) {
      onShare(index / file.value.jobs.length);
      const took = await takeJob(job, `/jobs/${index}`);
      if (took.kind === 'taken' && (took.outcome === 'new' || took.outcome === 'extended')) jobs += 1;
      // One that waits for the person is asked about by itself.
      if (took.kind === 'refused') left.push(took.words);
    }
    onShare(1);
    const procedures = await takeProcedures(file.value.procedures, library, say);
    const voices = await takeVoices(file.value.voices, store, say);
    const brought = withPortable(settings(), file.value.settings);
    await change(brought.settings);
    left.push(
      ...procedures.left,
      ...voices.left,
      ...brought.broken.map((place) => say('everything-broken', { place })),
      ...brought.otherWrenches.map((wrench) => say('everything-other-wrench', { wrench })),
      ...(brought.hasOthers ? [say('everything-settings-stay')] : []),
    );
    const { people, wrenches, tastes } = brought;
    const counts = { jobs, procedures: procedures.taken, voices: voices.taken, people, wrenches, settings: tastes };
    notices.news('everything', say('everything-taken', { file: name, ...counts }));
    if (left.length > 0) notices.trouble('file', say('everything-not-taken', { file: name, what: left.join(' ') }));
  }
}
