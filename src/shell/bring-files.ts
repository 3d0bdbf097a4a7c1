import type { UiEvent } from '../ui/events';
import type { Notice } from '../ui/notices';
import type { ScreenKey } from '../ui/words/words';
import type { Rooms } from './rooms';

type FilesChosen = Extract<UiEvent, { readonly type: 'import-files' }>;
type What = FilesChosen['what'];

/** Takes in files that were chosen or let go, one after the other; true where there is a procedure to be looked at now. */
export async function bringFiles({ what, files }: FilesChosen, rooms: Rooms): Promise<boolean> {
  const { notices } = rooms;
  const told = new Map<string, Notice>();
  let isShown = false;
  for (const file of files) {
    if (await bringFile(what, file, rooms)) isShown = true;
    // What is told of the next file would take its place: each has its line.
    for (const notice of notices.take(['file', 'procedure', 'import'])) {
      const before = told.get(notice.id);
      told.set(notice.id, before ? { ...notice, text: `${before.text}\n${notice.text}` } : notice);
    }
  }
  for (const notice of told.values()) notices.put(notice);
  return isShown;
}

async function bringFile(what: What, file: File, rooms: Rooms): Promise<boolean> {
  const { imports, procedures, jobs, models, sound, notices, say } = rooms;
  const wrong = wrongKind(what, file.name);
  if (wrong) {
    notices.trouble('file', say(wrong, { file: file.name }));
    return false;
  }
  switch (what) {
    case 'procedure': {
      const isShown = await procedures.bring(file);
      jobs.documentBrought();
      return isShown;
    }
    case 'model':
      if (await models.bring(file)) sound.renewOwnEar();
      return false;
    case 'job':
      await (await imports()).take(file);
      await jobs.look();
      return false;
  }
}

const ENDINGS = { job: /\.json$/i, procedure: /\.ya?ml$/i } as const;

/** What to say of a file whose name says that it is something else; one without an ending may be anything. */
function wrongKind(what: What, name: string) {
  if (what === 'model' || ENDINGS[what].test(name) || !/\.[^.\s]+$/.test(name)) return null;
  if (what === 'job') return ENDINGS.procedure.test(name) ? 'file-is-procedure' : 'file-no-job';
  return (ENDINGS.job.test(name) ? 'file-is-job' : 'file-no-procedure') satisfies ScreenKey;
}
