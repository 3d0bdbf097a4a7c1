import { placeOf } from '../core/job/place';
import { nodeOf } from '../core/job/plan';
import { earState } from './ear-screen';
import type { PorchView } from './porch/porch-desk';
import type { Rooms } from './rooms';

/** The state of things in a few words, for the page's data attributes: tests and whoever automates the page read them. */
export type Status = Readonly<Record<'ear' | 'voice' | 'armed' | 'place' | 'entries', string>>;

export function statusOf({ seat, sound }: Rooms, porch: PorchView | null): Status {
  const desk = seat.open?.desk.snapshot;
  const seen = desk ?? porch;
  const ear = seen ? earState(seen, sound.isSounding, sound.ear.isShutBy('pedal')) : 'off';
  const settled = seen?.ear.armed === seen?.live.revision;
  return {
    ear: ear === 'listening' && !settled ? 'arming' : ear,
    // A reply is not over in its listening gaps.
    voice: seen?.talking ? 'talking' : 'quiet',
    armed: seen?.ear.armed ?? '',
    place: desk ? nodeOf(desk.job.plan, placeOf(desk.job)) : '',
    entries: String(seat.entries.length),
  };
}
