import type { RecogniserEvent } from '../../core/ports';
import { keptAnswering } from '../kept-answering';
import { WorkerWatch } from '../worker-watch';
import { type FromFrame, GREETING, type ToFrame } from './frame-messages';

export type FrameLink = {
  readonly send: (message: ToFrame, transfer?: readonly Transferable[]) => void;
  readonly close: () => void;
};

/**
 * The page of the user's model, in a frame nobody sees. Taking the frame away ends the library's worker whatever
 * state it is in; one that falls silent is replaced, a bounded number of times with growing waits.
 */
export function frameLink(
  page: string,
  onStart: (send: FrameLink['send']) => void,
  tell: (event: FromFrame) => void,
): FrameLink {
  const watch = new WorkerWatch(performance.now());
  let frame: HTMLIFrameElement | null = null;
  let port: MessagePort | null = null;

  const send: FrameLink['send'] = (message, transfer = []) => port?.postMessage(message, [...transfer]);

  const stop = (): void => {
    port?.close();
    frame?.remove();
    port = null;
    frame = null;
  };

  const failed = (event: Extract<RecogniserEvent, { type: 'failed' }>): void => {
    // A model that does not load will not load the next time either.
    if (event.code === 'model-broken') stop();
    tell(event);
  };

  const receive = (event: FromFrame): void => {
    // Nothing else counts: the page around a worker that hangs still tells levels.
    if (event.type === 'pong') watch.answered();
    if (event.type === 'ready') watch.loaded();
    if (event.type === 'said') watch.proven();
    if (event.type === 'failed') failed(event);
    else tell(event);
  };

  const begin = (): void => {
    const made = Object.assign(document.createElement('iframe'), { src: page, hidden: true });
    made.title = 'vosk';
    frame = made;
    made.addEventListener('load', () => {
      const { port1, port2 } = new MessageChannel();
      port = port1;
      port1.onmessage = ({ data }: MessageEvent<FromFrame>) => receive(data);
      made.contentWindow?.postMessage(GREETING, new URL(page).origin, [port2]);
      onStart(send);
    });
    document.body.append(made);
  };

  const kept = keptAnswering(watch, {
    begin,
    stop,
    isUp: () => frame !== null,
    ping: (id) => send({ type: 'ping', id }),
    tell,
    silence: 'the recogniser of your model stopped answering',
  });
  return { send, close: kept.close };
}
