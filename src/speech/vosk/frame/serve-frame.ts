import { type FromFrame, GREETING, type ToFrame } from '../frame-messages';
import { Listening } from './listening';
import { openVosk } from './vosk-engine';

/** Waits for the app to hand over its port, and serves it. Only the page that holds this one, of the same address, may. */
export function serveFrame(): void {
  addEventListener('message', ({ origin, source, data, ports: [port] }) => {
    if (origin === location.origin && source === parent && data === GREETING && port) serve(port);
  });
}

function serve(app: MessagePort): void {
  let listening: Listening | null = null;
  let blocks: MessagePort | null = null;
  const early: ToFrame[] = [];
  const tell = (event: FromFrame): void => app.postMessage(event);

  const load = async (archive: Blob): Promise<void> => {
    const began = performance.now();
    const engine = await openVosk(archive, (stage) => tell({ type: 'loading', stage }));
    if (!engine.ok) {
      tell({ type: 'failed', ...engine.error });
      return;
    }
    listening = new Listening(engine.value, tell);
    for (const message of early.splice(0)) obey(listening, message);
    tell({ type: 'ready', msToLoad: Math.round(performance.now() - began) });
  };

  const obey = (ear: Listening, message: ToFrame): void => {
    switch (message.type) {
      case 'load':
        return;
      case 'listen':
        blocks?.close();
        blocks = message.blocks;
        ear.listen(message.sampleRate);
        blocks.onmessage = ({ data }: MessageEvent<Float32Array>) => ear.push(data);
        return;
      case 'arm':
        ear.arm(message);
        return;
      case 'mute':
        ear.mute();
        return;
      case 'unmute':
        ear.unmute();
        return;
      case 'ping':
        ear.ping(message.id);
        return;
    }
  };

  app.onmessage = ({ data }: MessageEvent<ToFrame>) => {
    if (data.type === 'load') void load(data.archive);
    else if (listening) obey(listening, data);
    else early.push(data);
  };
}
