import { Howl } from 'howler';
import { fail, ok } from '../core/result';
import { audioContext, replyBus, wake } from './audio-bus';
import { earconSamples } from './earcons';
import type { Rendering } from './flite/flite';
import type { Ended, Mouth, Piece, Stop } from './mouth';

/** How long beyond its length a sound may take before it is given up, in milliseconds. */
const PATIENCE_MS = 2000;

/** A rendered WAV as a piece of speech, played through howler. */
export function playable({ wav, ms }: Rendering): Piece {
  return { ms, sound: (ended) => whenAwake(ended, (over) => playWav(wav, ms, over)) };
}

/** Earcons go straight onto the bus: they are samples already, and must not wait for a file to load. */
export const beep: Mouth['beep'] = (earcon, ended) =>
  whenAwake(ended, (over, context) => {
    const samples = earconSamples(earcon, context.sampleRate);
    const buffer = context.createBuffer(1, samples.length, context.sampleRate);
    buffer.copyToChannel(samples, 0);
    const source = new AudioBufferSourceNode(context, { buffer });
    const bus = replyBus();
    if (bus !== null) source.connect(bus);
    source.onended = () => over(ok(undefined));
    source.start();
    return () => {
      source.onended = null;
      source.stop();
    };
  });

/** A suspended context would hold every sound back and let them all out at once on the next tap: refuse instead. */
function whenAwake(ended: Ended, begin: (over: Ended, context: AudioContext) => Stop): Stop {
  const context = audioContext();
  if (context?.state === 'running') return begin(ended, context);
  let stopped = false;
  let stop: Stop = () => {
    stopped = true;
  };
  void (context === null ? Promise.resolve(false) : wake(context)).then((awake) => {
    if (stopped) return;
    if (awake && context !== null) stop = begin(ended, context);
    else
      ended(fail({ code: 'audio-blocked', detail: context === null ? 'never opened' : `context is ${context.state}` }));
  });
  return () => stop();
}

function playWav(wav: Rendering['wav'], ms: number, ended: Ended): Stop {
  const url = URL.createObjectURL(new Blob([wav], { type: 'audio/wav' }));
  const howl = new Howl({ src: [url], format: ['wav'] });
  let loading = true;
  let over = false;

  // howler keeps every decoded buffer by its address, so each is unloaded and its address revoked after use. Not while
  // it loads: howler takes the failed request for a reason to try again with an audio element.
  const release = (): void => {
    if (loading) return;
    howl.unload();
    URL.revokeObjectURL(url);
  };
  const end = (outcome: Parameters<Ended>[0] | null): void => {
    if (over) return;
    over = true;
    clearTimeout(watchdog);
    howl.stop();
    release();
    if (outcome !== null) ended(outcome);
  };
  const watchdog = setTimeout(() => {
    end(fail({ code: 'voice-silent', detail: `no end after ${Math.round(ms + PATIENCE_MS)} ms` }));
  }, ms + PATIENCE_MS);

  howl.once('load', () => {
    loading = false;
    if (over) release();
    else howl.play();
  });
  howl.once('end', () => end(ok(undefined)));
  howl.once('loaderror', (_id, detail) => {
    loading = false;
    if (over) release();
    else end(fail({ code: 'voice-crashed', detail: String(detail) }));
  });
  return () => end(null);
}
