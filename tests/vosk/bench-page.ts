import type { LiveGrammar } from '../../src/core/language/grammar';
import type { Recogniser, RecogniserEvent } from '../../src/core/ports';
import { type FrameLink, frameLink } from '../../src/speech/vosk/frame-link';
import { modelShelf } from '../../src/speech/vosk/model-shelf';
import { type VoskNews, voskRecogniser } from '../../src/speech/vosk/recogniser';
import { phrasesFor } from '../../src/speech/vosk/vocabulary';

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
    microphone: { choice: () => ({ deviceId: null, echoCancellation: false }) },
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
async function openFrame(live: LiveGrammar, sampleRate: number) {
  const model = await shelf.open();
  if (!model) throw new Error('no model is kept');
  const { revision, phrases } = phrasesFor(live, model.words);
  const { port1, port2 } = new MessageChannel();
  const counts = { said: 0, torn: 0 };
  let levels = 0;
  let pings = 0;
  let pongs = 0;
  let answered: () => void = () => undefined;
  const link = await new Promise<FrameLink>((resolve, reject) => {
    const made: FrameLink = frameLink(
      page,
      (send) => {
        send({ type: 'load', archive: model.archive });
        send({ type: 'arm', revision, phrases });
        send({ type: 'listen', sampleRate, blocks: port2 }, [port2]);
      },
      (event) => {
        if (event.type === 'ready') resolve(made);
        if (event.type === 'failed') reject(new Error(event.detail));
        if (event.type === 'said') counts[event.said.torn ? 'torn' : 'said'] += 1;
        if (event.type === 'level') levels += 1;
        if (event.type === 'pong') pongs += 1;
        answered();
      },
    );
  });

  const next = (): Promise<void> =>
    new Promise((resolve) => {
      answered = resolve;
    });
  let fed = 0;

  /** Plays some sound over and over, each part once the frame has had the part before and has nearly caught up. */
  const feed = async (samples: readonly number[], times: number): Promise<typeof counts> => {
    const block = Math.round(sampleRate * 0.03);
    const batch = Math.round(sampleRate * 2);
    for (let time = 0; time < times; time += 1)
      for (let from = 0; from < samples.length; from += batch) {
        const until = Math.min(samples.length, from + batch);
        for (let at = from; at < until; at += block) {
          port1.postMessage(Float32Array.from(samples.slice(at, Math.min(until, at + block))));
        }
        fed += (until - from) / sampleRate;
        // Ten levels come back for each second that has arrived.
        while (levels < Math.floor(fed * 10) - 1) await next();
        pings += 1;
        link.send({ type: 'ping', id: pings });
        while (pongs < pings) await next();
      }
    return counts;
  };
  return { feed, close: link.close };
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
