import { Ear, type EarHost } from '../ear/ear';
import type { FromEar, ToEar } from '../ear/messages';

/** The worker's side of the protocol. One ear for the worker's life; microphones come and go. */
export function serveEar(scope: DedicatedWorkerGlobalScope, host: Omit<EarHost, 'modelBase'>): void {
  const post = (event: FromEar): void => scope.postMessage(event);
  let ear: Ear | null = null;
  let blocks: MessagePort | null = null;
  /** Loading and changing the microphone take time; what comes meanwhile waits in order. */
  let turn = Promise.resolve();

  const silence = (): void => {
    blocks?.close();
    blocks = null;
  };

  const handle = async (message: ToEar): Promise<void> => {
    switch (message.type) {
      case 'load': {
        const began = performance.now();
        ear = new Ear({ ...host, modelBase: message.modelBase });
        const msToLoad = (): number => Math.round(performance.now() - began);
        const events = await ear.load(message.language, message.aid);
        for (const event of events) post(event.type === 'ready' ? { ...event, msToLoad: msToLoad() } : event);
        if (message.aid?.means && !ear.isAided) post({ type: 'unaided' });
        return;
      }
      case 'listen': {
        silence();
        await ear?.listen(message.sampleRate);
        // The page transfers a port; the protocol's type is bare because the ear is compiled without the DOM.
        blocks = message.blocks as MessagePort;
        blocks.onmessage = ({ data }: MessageEvent<Float32Array>) => ear?.push(data).forEach(post);
        return;
      }
      case 'arm':
        ear?.arm(message.grammar).forEach(post);
        return;
      case 'mute':
        ear?.mute(message.mute).forEach(post);
        return;
      case 'unmute':
        ear?.unmute().forEach(post);
        return;
      case 'keep-sound':
        ear?.keepSound(message.keep);
        return;
      case 'read': {
        const reads = await ear?.read(message.words, (heard) => post({ type: 'line', heard }));
        if (reads?.ok === false) post({ type: 'reading-failed', detail: reads.error });
        return;
      }
      case 'learn':
        post({ type: 'lesson', lesson: ear?.learn() ?? null });
        return;
      case 'end-reading':
        ear?.endReading().forEach(post);
        return;
      case 'stop':
        silence();
        return;
      case 'ping':
        post({ type: 'pong', id: message.id });
        return;
    }
  };

  scope.onmessage = ({ data }: MessageEvent<ToEar>) => {
    // A failure in one turn must not swallow the next; rethrown from a task it reaches the page as a worker error.
    turn = turn.then(() => handle(data)).catch(rethrowLater);
  };
}

function rethrowLater(error: unknown): void {
  setTimeout(() => {
    throw error;
  });
}
