import type { LiveGrammar } from '../../core/language/grammar';
import { Listeners } from '../../core/listeners';
import type { Recogniser, RecogniserEvent } from '../../core/ports';
import { type MicrophoneSetup, microphoneFeed } from '../microphone-feed';
import { type FrameLink, frameLink } from './frame-link';
import type { FromFrame, LoadStage } from './frame-messages';
import type { ModelShelf, OpenModel } from './model-shelf';
import { judge } from './verdict';
import { phrasesFor } from './vocabulary';

/** What the recogniser port has no event for, and Setup shows. */
export type VoskNews =
  | { readonly type: 'loading'; readonly stage: LoadStage }
  /** Words of the grammar just armed that the model does not know: what is said with them cannot be heard. */
  | { readonly type: 'missing-words'; readonly words: readonly string[] };

export type VoskSetup = {
  /** Running or about to run: made after the user's first tap, and shared with the voice. */
  readonly context: AudioContext;
  /** The address of vosk.html, absolute and of the app's own origin. */
  readonly page: string;
  readonly model: Pick<ModelShelf, 'open'>;
  readonly microphone: MicrophoneSetup;
  readonly onNews?: (news: VoskNews) => void;
};

/** The recogniser, and the microphone's own stream for whoever records a note. */
export type VoskRecogniser = Recogniser & {
  readonly stream: () => MediaStream | null;
  /** Another microphone was chosen. */
  readonly reopen: () => void;
};

/** The recogniser of a model the user brought. Half duplex: while the voice speaks it hears nothing at all. */
export function voskRecogniser({ context, page, model, microphone, onNews }: VoskSetup): VoskRecogniser {
  const listeners = new Listeners<RecogniserEvent>();
  let state: 'new' | 'started' | 'closed' = 'new';
  let link: FrameLink | null = null;
  let opened: OpenModel | null = null;
  let grammar: LiveGrammar | null = null;
  let muted = false;
  let loaded: RecogniserEvent | null = null;

  const feed = microphoneFeed(context, microphone, listeners, () => void listen());

  /** Joins microphone and frame, and only then reports that the ear is ready. */
  const listen = async (): Promise<void> => {
    if (!link || !loaded) return;
    const ready = loaded;
    const blocks = await feed.open();
    if (!blocks) return;
    link.send({ type: 'listen', sampleRate: context.sampleRate, blocks }, [blocks]);
    listeners.tell(ready);
  };

  const arm = (send: FrameLink['send']): void => {
    if (!grammar || !opened) return;
    const { revision, phrases, missing } = phrasesFor(grammar, opened.words);
    send({ type: 'arm', revision, phrases });
    if (missing.length > 0) onNews?.({ type: 'missing-words', words: missing });
  };

  const introduce = (send: FrameLink['send']): void => {
    if (!opened) return;
    loaded = null;
    send({ type: 'load', archive: opened.archive });
    arm(send);
    if (muted) send({ type: 'mute' });
  };

  const receive = (event: FromFrame): void => {
    switch (event.type) {
      case 'pong':
        return;
      case 'loading':
        onNews?.(event);
        return;
      case 'ready':
        loaded = event;
        void listen();
        return;
      case 'said':
        if (grammar) listeners.tell(judge(grammar, event));
        return;
      default:
        listeners.tell(event);
    }
  };

  const begin = async (): Promise<void> => {
    opened = await model.open();
    if (state === 'closed') return;
    if (opened) link = frameLink(page, introduce, receive);
    else listeners.tell({ type: 'failed', code: 'model-missing', detail: 'no model has been chosen on this device' });
  };

  return {
    start: () => {
      if (state !== 'new') return;
      state = 'started';
      void begin();
    },
    arm: (next) => {
      grammar = next;
      if (link) arm(link.send);
    },
    mute: () => {
      muted = true;
      link?.send({ type: 'mute' });
    },
    unmute: () => {
      muted = false;
      link?.send({ type: 'unmute' });
    },
    on: listeners.add,
    stream: feed.stream,
    reopen: () => void feed.reopen(),
    close: () => {
      state = 'closed';
      link?.close();
      link = null;
      feed.close();
      listeners.clear();
    },
  };
}
