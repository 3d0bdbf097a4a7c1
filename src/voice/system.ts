import type { Clock, Voice } from '../core/ports';
import { ok } from '../core/result';
import { Listeners } from './listeners';
import type { Ended, Mouth, MouthEvent, Stop } from './mouth';
import { estimatedMs } from './pieces';
import { speakOnce } from './system-utterance';
import { systemVoiceAt } from './system-voices';
import { Talker } from './talker';

export type SystemSettings = { readonly voiceUri: string; readonly rate: number };

/** After this many stalls in a row the system voice is let be until it is chosen again. */
const MOST_STALLS = 2;

/** The loudspeaker's share of a sound the system plays cannot be measured from a page; a guess on the safe side. */
const SYSTEM_TAIL_MS = 200;

/** The system's voice as the user chose it in Setup, with the embedded one behind it. */
export function systemVoice(
  clock: Pick<Clock, 'mono'>,
  settings: () => SystemSettings,
  embedded: Mouth,
  synth: SpeechSynthesis = speechSynthesis,
): Voice {
  return new Talker(systemMouth(settings, embedded, synth), clock);
}

/**
 * Speaks through speechSynthesis, which can stall without a word: a sentence that does not begin or end in time is said
 * again by the embedded voice. Earcons and the fallback go over the reply bus; the system's own speech does not.
 */
export function systemMouth(settings: () => SystemSettings, embedded: Mouth, synth: SpeechSynthesis): Mouth {
  const listeners = new Listeners<MouthEvent>();
  const leaveEmbedded = embedded.on((event) => {
    if (event.type === 'failed') listeners.tell(event);
  });
  const announcement = setTimeout(() => listeners.tell({ type: 'ready' }));
  let stalls = 0;

  /** Says the text in the embedded voice, however long that takes to render. */
  function sayInstead(text: string, ended: Ended): Stop {
    let stopped = false;
    let stop: Stop = () => {
      stopped = true;
    };
    void embedded.make(text).then((made) => {
      if (stopped) return;
      if (made.ok) stop = made.value.sound(ended);
      else ended(made);
    });
    return () => stop();
  }

  function sound(text: string, ended: Ended): Stop {
    const { voiceUri, rate } = settings();
    let stop = speakOnce(synth, { text, rate, voice: systemVoiceAt(voiceUri, synth) }, (trouble) => {
      if (trouble === null) {
        stalls = 0;
        ended(ok(undefined));
        return;
      }
      stalls++;
      listeners.tell({ type: 'failed', code: 'system-voice-stalled', detail: trouble });
      stop = sayInstead(text, ended);
    });
    return () => stop();
  }

  return {
    make: async (text) => {
      if (stalls >= MOST_STALLS) return embedded.make(text);
      return ok({ ms: estimatedMs(text, settings().rate), sound: (ended) => sound(text, ended) });
    },
    // Only worth the memory once the embedded voice has to step in.
    prepare: (texts) => embedded.prepare(stalls >= MOST_STALLS ? texts : []),
    beep: embedded.beep,
    tailMs: () => Math.max(SYSTEM_TAIL_MS, embedded.tailMs()),
    rate: () => settings().rate,
    on: listeners.add,
    close: () => {
      clearTimeout(announcement);
      leaveEmbedded();
      synth.cancel();
      listeners.clear();
      embedded.close();
    },
  };
}
