import type { LiveGrammar } from '../core/language/grammar';
import { Listeners } from '../core/listeners';
import type { Recogniser, RecogniserEvent } from '../core/ports';
import type { ReadingAloud, ReadingEvent } from '../core/voice-profile/reading-aloud';
import type { HearingAid } from '../core/voice-profile/voice-profile';
import type { EarLanguage } from './ear/messages';
import { type EarLink, earLink } from './ear-link';
import { type MicrophoneSetup, microphoneFeed } from './microphone-feed';

export type EmbeddedSetup = {
  /** Running or about to run: made after the user's first tap, and shared with the voice. */
  readonly context: AudioContext;
  /** Where the model folders are served: absolute, with a trailing slash. */
  readonly modelBase: string;
  readonly language: EarLanguage;
  readonly microphone: MicrophoneSetup;
  /** What reading aloud has taught about who speaks. */
  readonly aid: HearingAid | null;
};

/** The recogniser, and the microphone's own stream for whoever records a note, and the same ear for lines read aloud. */
export type EmbeddedRecogniser = Recogniser & {
  readonly stream: () => MediaStream | null;
  /** Another microphone was chosen. */
  readonly reopen: () => void;
  /** Whether its answers carry the sound of what was said. */
  readonly keepSound: (keep: boolean) => void;
  readonly reading: ReadingAloud;
};

/** The recogniser that ships with the app: microphone, audio thread, and a worker with the ear in it. */
export function embeddedRecogniser({
  context,
  modelBase,
  language,
  microphone,
  aid,
}: EmbeddedSetup): EmbeddedRecogniser {
  const listeners = new Listeners<RecogniserEvent>();
  const readers = new Listeners<ReadingEvent>();
  let link: EarLink | null = null;
  let grammar: LiveGrammar | null = null;
  let muted = false;
  let keepsSound = false;
  let loaded: RecogniserEvent | null = null;
  let isOpening = false;

  const feed = microphoneFeed(context, microphone, listeners, () => void listen());

  /** Joins microphone and worker, and only then reports that the ear is ready. */
  const listen = async (): Promise<void> => {
    if (!link || !loaded) return;
    const ready = loaded;
    isOpening = true;
    const blocks = await feed.open();
    isOpening = false;
    // An ear that failed while the microphone opened is not ready, whatever it said before.
    if (!blocks || loaded !== ready) return;
    link.send({ type: 'listen', sampleRate: context.sampleRate, blocks }, [blocks]);
    listeners.tell(ready);
  };

  const receive = (event: RecogniserEvent | ReadingEvent): void => {
    if (isOfReading(event)) {
      readers.tell(event);
    } else if (event.type === 'ready') {
      loaded = event;
      void listen();
    } else {
      if (event.type === 'failed' && isOpening) loaded = null;
      listeners.tell(event);
    }
  };

  const introduce = (send: EarLink['send']): void => {
    loaded = null;
    send({ type: 'load', modelBase, language, aid });
    if (grammar) send({ type: 'arm', grammar });
    if (muted) send({ type: 'mute', mute: 'deaf' });
    send({ type: 'keep-sound', keep: keepsSound });
  };

  return {
    start: () => {
      link ??= earLink(makeWorker, introduce, receive);
    },
    arm: (next) => {
      grammar = next;
      link?.send({ type: 'arm', grammar: next });
    },
    mute: () => {
      muted = true;
      link?.send({ type: 'mute', mute: feed.cancelsEcho() ? 'stop-only' : 'deaf' });
    },
    unmute: () => {
      muted = false;
      link?.send({ type: 'unmute' });
    },
    on: listeners.add,
    stream: feed.stream,
    reopen: () => void feed.reopen(),
    keepSound: (keep) => {
      keepsSound = keep;
      link?.send({ type: 'keep-sound', keep });
    },
    reading: {
      read: (words) => link?.send({ type: 'read', words }),
      learn: () => link?.send({ type: 'learn' }),
      end: () => link?.send({ type: 'end-reading' }),
      on: readers.add,
    },
    close: () => {
      link?.close();
      link = null;
      feed.close();
      listeners.clear();
      readers.clear();
    },
  };
}

const OF_READING: ReadonlySet<string> = new Set<ReadingEvent['type']>(['line', 'lesson', 'reading-failed', 'unaided']);

const isOfReading = (event: RecogniserEvent | ReadingEvent): event is ReadingEvent => OF_READING.has(event.type);

function makeWorker(): Worker {
  return new Worker(new URL('./worker/ear-worker.ts', import.meta.url), { type: 'module', name: 'ear' });
}
