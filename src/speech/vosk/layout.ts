import { fail, ok, type Result } from '../../core/result';
import type { ArchiveFault } from './archive-fault';
import type { TarFile } from './tar';

/** Two graphs, of sounds and of words: only such a model takes our grammar. */
const OWN_GRAMMAR = ['graph/HCLr.fst', 'graph/Gr.fst'];
const STATIC_GRAPH = 'graph/HCLG.fst';
/** Without the word boundaries no result says when a word was said. */
const ALWAYS = ['am/final.mdl', 'conf/mfcc.conf', 'conf/model.conf', 'graph/phones/word_boundary.int'];

/** The name of the one top folder, where the files are those of a model that takes a grammar at run time. */
export function modelFolder(files: readonly TarFile[]): Result<string, ArchiveFault> {
  const atTop = files.some(({ path }) => !path.includes('/') || path === ALWAYS[0]);
  if (files.length === 0 || atTop) return fail({ code: 'archive-no-top-folder' });
  const [folder = '', ...others] = new Set(files.map(({ path }) => path.slice(0, path.indexOf('/'))));
  if (others.length > 0) return fail({ code: 'archive-several-top-folders', names: [folder, ...others] });
  const full = new Set(files.filter(({ size }) => size > 0).map(({ path }) => path.slice(folder.length + 1)));
  const missing = ALWAYS.filter((file) => !full.has(file));
  const deeper = [...full].find((path) => path.endsWith(`/${ALWAYS[0]}`));
  if (missing.length > 0 && deeper) {
    return fail({ code: 'archive-nested', folder: `${folder}/${deeper.slice(0, -`/${ALWAYS[0]}`.length)}` });
  }
  if (missing.length === 0 && full.has(STATIC_GRAPH)) return fail({ code: 'archive-static-graph' });
  missing.push(...OWN_GRAMMAR.filter((file) => !full.has(file)));
  return missing.length > 0 ? fail({ code: 'archive-file-missing', files: missing }) : ok(folder);
}
