import type { LiveGrammar } from '../../src/core/language/grammar';
import type { Recogniser, RecogniserEvent } from '../../src/core/ports';
import { type FrameLink, frameLink } from '../../src/speech/vosk/frame-link';
import type { FromFrame } from '../../src/speech/vosk/frame-messages';
import { modelShelf } from '../../src/speech/vosk/model-shelf';
import { type VoskNews, voskRecogniser } from '../../src/speech/vosk/recogniser';

/** What the browser test works: the recogniser as the app would make it, with its events kept for looking at. */

const page = new URL('vosk.html', document.baseURI).href;
const shelf = modelShelf(document.baseURI);

function listenTo(live: LiveGrammar) {
  const context = new AudioContext();
  const events: RecogniserEvent[] = [];
  const news: VoskNews[] = [];
  const recogniser: Recogniser = voskRecogniser({
    context,
    page,
    model: shelf,
    microphone: { deviceId: null, echoCancellation: false },
    onNews: (item) => news.push(item),
  });
  recogniser.on((event) => {
    if (event.type !== 'level') events.push(event);
  });
  recogniser.arm(live);
  void context.resume().then(() => recogniser.start());
  return { recogniser, events, news };
}

/** The frame alone, fed as fast as it takes: hours of sound in minutes. */
async function openFrame(archive: Blob, phrases: readonly string[], sampleRate: number) {
  const { port1, port2 } = new MessageChannel();
  const heard: string[] = [];
  let pong: () => void = () => undefined;
  const link = await new Promise<FrameLink>((resolve, reject) => {
    const made: FrameLink = frameLink(
      page,
      (send) => {
        send({ type: 'load', archive });
        send({ type: 'arm', revision: 'soak', phrases });
        send({ type: 'listen', sampleRate, blocks: port2 }, [port2]);
      },
      (event: FromFrame) => {
        if (event.type === 'ready') resolve(made);
        if (event.type === 'failed') reject(new Error(event.detail));
        if (event.type === 'said') heard.push(event.said.words.map(({ word }) => word).join(' '));
        if (event.type === 'pong') pong();
      },
    );
  });
  /** Resolves when nearly all of it has been decoded. */
  const feed = async (samples: Float32Array): Promise<void> => {
    const block = Math.round(sampleRate * 0.03);
    for (let at = 0; at < samples.length; at += block) port1.postMessage(samples.slice(at, at + block));
    await new Promise<void>((resolve) => {
      pong = resolve;
      // Through the same queue as the sound, so that it is asked after it.
      setTimeout(() => link.send({ type: 'ping', id: 0 }), 0);
    });
  };
  return { feed, heard, close: link.close };
}

/** Whether this page may make code from text. Asked as it loads: whatever a debugger asks is let through. */
const buildsCode = ((): boolean => {
  try {
    return new Function('return true')() === true;
  } catch {
    return false;
  }
})();

const voskBench = { shelf, listenTo, openFrame, buildsCode };
export type VoskBench = typeof voskBench;
Object.assign(window, { voskBench });
