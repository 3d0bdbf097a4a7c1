import { Listeners } from '../core/listeners';
import type { Clock, Voice } from '../core/ports';
import { ok } from '../core/result';
import type { Ended, Mouth, MouthEvent, Stop } from './mouth';
import { estimatedMs } from './pieces';
import { Talker } from './talker';

export type SilentOptions = {
  /** `as-spoken` takes as long as speech would, so that gaps and interruptions can be tried; `none` takes no time. */
  readonly pace: 'as-spoken' | 'none';
  /** Told each piece when it would have sounded. */
  readonly said?: (text: string) => void;
};

/** A voice that keeps the turns and makes no sound: for tests, and where the words on the screen must do. */
export function silentVoice(clock: Pick<Clock, 'mono'>, options: SilentOptions): Voice {
  return new Talker(silentMouth(options), clock);
}

export function silentMouth({ pace, said = () => {} }: SilentOptions): Mouth {
  const listeners = new Listeners<MouthEvent>();
  const announcement = setTimeout(() => listeners.tell({ type: 'ready' }));
  return {
    make: async (text) => {
      const ms = pace === 'none' ? 0 : estimatedMs(text);
      const sound = (ended: Ended): Stop => {
        said(text);
        return after(ms, ended);
      };
      return ok({ ms, sound });
    },
    prepare: () => {},
    beep: (_earcon, ended) => after(0, ended),
    tailMs: () => 0,
    rate: () => 1,
    on: listeners.add,
    close: () => {
      clearTimeout(announcement);
      listeners.clear();
    },
  };
}

function after(ms: number, ended: Ended): Stop {
  const timer = setTimeout(() => ended(ok(undefined)), ms);
  return () => clearTimeout(timer);
}
