import { Listeners } from '../core/listeners';
import type { Recogniser, RecogniserEvent } from '../core/ports';
import type { Tongue } from '../core/tongue';
import { earLanguage } from '../speech/ear/ear-language';
import type { Sound } from '../voice/flite/wav';
import { earForNode } from './ear-host';

/** Amplitude of the faint noise between recordings: a real room is never digitally silent. */
const ROOM = 0.0008;

/** The ear of the app behind its port, fed with recordings instead of a microphone. */
export async function earRecogniser(tongue: Tongue): Promise<Recogniser & { play: (sound: Sound) => Promise<void> }> {
  const ear = await earForNode(earLanguage(tongue));
  const listeners = new Listeners<RecogniserEvent>();
  const tell = (events: readonly RecogniserEvent[]): void => {
    for (const event of events) listeners.tell(event);
  };
  let rate = 0;
  let seed = 1;
  const room = (seconds: number): Float32Array =>
    Float32Array.from({ length: Math.round(seconds * rate) }, () => {
      // Park and Miller's minimal standard generator: repeatable noise without a clock.
      seed = (seed * 48_271) % 2_147_483_647;
      return ROOM * (seed / 1_073_741_823.5 - 1);
    });
  const push = (samples: Float32Array): void => {
    const block = Math.round(rate * 0.03);
    for (let at = 0; at < samples.length; at += block) tell(ear.push(samples.subarray(at, at + block)));
  };
  return {
    start: () => tell([{ type: 'ready', msToLoad: 0 }]),
    arm: (grammar) => tell(ear.arm(grammar)),
    mute: () => tell(ear.mute('deaf')),
    unmute: () => tell(ear.unmute()),
    on: listeners.add,
    close: () => listeners.clear(),
    play: async ({ samples, rateHz }) => {
      if (rateHz !== rate) {
        rate = rateHz;
        await ear.listen(rate);
        push(room(1));
      }
      push(room(0.4));
      const noise = room(samples.length / rate);
      push(samples.map((sample, i) => sample + (noise[i] ?? 0)));
      push(room(1.2));
    },
  };
}
