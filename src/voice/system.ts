import { Listeners } from '../core/listeners';
import type { Breath } from '../core/phrasing/breath';
import type { Clock, Voice } from '../core/ports';
import { ok } from '../core/result';
import type { Ended, Mouth, MouthEvent, Stop } from './mouth';
import { estimatedMs } from './pieces';
import { speakOnce } from './system-utterance';
import { systemVoiceAt } from './system-voices';
import { Talker } from './talker';

export type SystemSettings = { readonly voiceUri: string; readonly rate: number };

/** The language a system voice must speak: its code, and where its sentences may be broken. */
export type SpokenLanguage = { readonly code: string; readonly breath: Breath };

/** After this many stalls in a row the system voice is let be until it is chosen again. */
const MOST_STALLS = 2;

/** The loudspeaker's share of a sound the system plays cannot be measured from a page; a guess on the safe side. */
const SYSTEM_TAIL_MS = 200;

/** The system's voice as the user chose it in Setup, with another mouth behind it for whatever it does not say. */
export function systemVoice(
  clock: Pick<Clock, 'mono'>,
  settings: () => SystemSettings,
  { code, breath }: SpokenLanguage,
  behind: Mouth,
  synth: SpeechSynthesis | undefined = globalThis.speechSynthesis,
): Voice {
  return new Talker(systemMouth(settings, code, behind, synth), clock, breath);
}

/**
 * Speaks through speechSynthesis, which can stall without a word: a sentence that does not begin or end in time is said
 * again by the mouth behind, and so is everything where the machine has no voice of the language: a voice of another one
 * would read it beyond recognition. Earcons go over the reply bus; the system's own speech does not.
 */
export function systemMouth(
  settings: () => SystemSettings,
  language: string,
  behind: Mouth,
  synth: SpeechSynthesis | undefined,
): Mouth {
  const listeners = new Listeners<MouthEvent>();
  const leaveBehind = behind.on((event) => {
    if (event.type === 'failed') listeners.tell(event);
  });
  const announcement = setTimeout(() => listeners.tell({ type: 'ready' }));
  let stalls = 0;

  /** Says the text with the mouth behind, however long that takes to render. */
  function sayInstead(text: string, ended: Ended): Stop {
    let stopped = false;
    let stop: Stop = () => {
      stopped = true;
    };
    void behind.make(text).then((made) => {
      if (stopped) return;
      if (made.ok) stop = made.value.sound(ended);
      else ended(made);
    });
    return () => stop();
  }

  const voiceNow = (): SpeechSynthesisVoice | null =>
    synth && stalls < MOST_STALLS ? systemVoiceAt(settings().voiceUri, language, synth) : null;

  function sound(synthesis: SpeechSynthesis, voice: SpeechSynthesisVoice, text: string, ended: Ended): Stop {
    const { rate } = settings();
    let stop = speakOnce(synthesis, { text, rate, voice }, (trouble) => {
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
      const voice = voiceNow();
      if (!synth || !voice) return behind.make(text);
      return ok({ ms: estimatedMs(text, settings().rate), sound: (ended) => sound(synth, voice, text, ended) });
    },
    // Only worth the memory once the mouth behind has to step in.
    prepare: (texts) => behind.prepare(voiceNow() ? [] : texts),
    beep: behind.beep,
    tailMs: () => Math.max(SYSTEM_TAIL_MS, behind.tailMs()),
    rate: () => settings().rate,
    on: listeners.add,
    close: () => {
      clearTimeout(announcement);
      leaveBehind();
      synth?.cancel();
      listeners.clear();
      behind.close();
    },
  };
}
