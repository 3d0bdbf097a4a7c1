import type { Say } from '../../ui/words/words';
import { type Library, ownDocuments } from '../library';

/** How many of a kind are here now that were not, and why others are not. */
export type Taken = { readonly taken: number; readonly left: readonly string[] };

/** Documents out of a file that carries several. One that is here in another text stays as it is here. */
export async function takeProcedures(
  raw: readonly unknown[],
  library: Pick<Library, 'take'>,
  say: Say,
): Promise<Taken> {
  let taken = 0;
  const left: string[] = [];
  for (const [index, one] of raw.entries()) {
    const [given] = ownDocuments([one]);
    if (!given) {
      left.push(say('everything-broken', { place: `/procedures/${index}` }));
      continue;
    }
    const { outcome, title, id } = await library.take(given.text, given.file);
    if (outcome === 'new') taken += 1;
    if (outcome === 'other-text') left.push(say('everything-other-text', { title }));
    if (outcome === 'id-taken') left.push(say('procedure-id-taken', { id }));
    if (outcome === 'not-usable') left.push(say('procedure-not-usable', { file: given.file }));
  }
  return { taken, left };
}
