import { reply } from '../../core/phrasing/reply';
import type { OpenJob } from '../job/job-desk';
import type { ClipKeeper } from './clip-keeper';
import type { ClipParts } from './clips';
import type { StillFault } from './take-still';

const FAULT = {
  'no-camera': 'picture-no-camera',
  refused: 'picture-refused',
  busy: 'picture-busy',
  failed: 'picture-failed',
} as const satisfies Record<StillFault['code'], string>;

/** Takes a picture and keeps it. Whatever comes of it is said. */
export async function pictureInto(
  open: OpenJob,
  step: string,
  keeper: ClipKeeper,
  still: ClipParts['still'],
): Promise<void> {
  const full = await keeper.full(open);
  if (full) {
    open.desk.excuse([full]);
    return;
  }
  const taken = await still(() => open.desk.answer([reply('picture-asks', {})]));
  if (!taken.ok) {
    open.desk.excuse([reply(FAULT[taken.error.code], {})]);
    return;
  }
  const { mime, bytes } = taken.value;
  await keeper.keep(open, { kind: 'pictured', step, recorded: { mime, bytes }, told: reply('picture-taken', {}) });
}
