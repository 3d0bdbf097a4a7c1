import { type Reply, replies, reply, text } from '../../phrasing/reply';
import type { LooseEnd } from '../job';

/** Loose ends by name; something dropped has no name of its own. */
export const openEnds = (ends: Iterable<LooseEnd>) => replies([...ends].map(endName));

function endName(end: LooseEnd): Reply {
  switch (end.why) {
    case 'dropped':
      return reply('end-dropped', {});
    case 'wrench':
      return reply('end-wrench', { what: text(end.what) });
    case 'step':
    case 'came-off':
    case 'skipped':
      return reply('end-named', { what: text(end.what) });
  }
}
