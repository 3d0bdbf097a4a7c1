import type { Say } from '../ui/words/words';
import type { NoticeBoard } from './notice-board';

/** A file as text, or null with the trouble told. */
export async function textOf(file: File, most: number, say: Say, notices: NoticeBoard): Promise<string | null> {
  if (file.size > most * 1e6) {
    notices.trouble('file', say('file-too-big', { file: file.name, megabytes: most }));
    return null;
  }
  try {
    const text = await file.text();
    notices.clear('file');
    return text;
  } catch {
    notices.trouble('file', say('file-unreadable', { file: file.name }));
    return null;
  }
}
