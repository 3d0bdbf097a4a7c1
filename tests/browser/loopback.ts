import type { BrowserContext } from 'playwright-core';

/**
 * A bay where the loudspeaker stands beside the microphone: whatever reaches the loudspeaker comes back in at this level,
 * 80 ms late, over faint noise.
 */
export async function loopReplies(context: BrowserContext, decibels: number): Promise<void> {
  await context.addInitScript(
    (gain) => {
      let room: MediaStreamAudioDestinationNode | null = null;
      const connect = AudioNode.prototype.connect as (this: AudioNode, target: AudioNode | AudioParam) => AudioNode;
      const loop = (bus: AudioNode): MediaStreamAudioDestinationNode => {
        const { context: audio } = bus;
        if (!(audio instanceof AudioContext)) throw new Error('replies are not played live');
        const end = audio.createMediaStreamDestination();
        const level = new GainNode(audio, { gain });
        const late = new DelayNode(audio, { delayTime: 0.08 });
        const hiss = audio.createBuffer(1, audio.sampleRate * 2, audio.sampleRate);
        const samples = hiss.getChannelData(0);
        let seed = 7;
        for (let i = 0; i < samples.length; i++) {
          seed = (seed * 48_271) % 2_147_483_647;
          samples[i] = 0.001 * (seed / 1_073_741_823.5 - 1);
        }
        const noise = new AudioBufferSourceNode(audio, { buffer: hiss, loop: true });
        for (const [from, to] of [
          [bus, level],
          [level, late],
          [late, end],
          [noise, end],
        ] as const)
          connect.call(from, to);
        noise.start();
        return end;
      };
      AudioNode.prototype.connect = function (this: AudioNode, target: AudioNode | AudioParam) {
        if (target instanceof AudioDestinationNode) room ??= loop(this);
        return connect.call(this, target);
      } as typeof AudioNode.prototype.connect;
      navigator.mediaDevices.getUserMedia = async () => {
        if (!room) throw new DOMException('nothing is played yet', 'NotFoundError');
        return room.stream.clone();
      };
    },
    10 ** (decibels / 20),
  );
}

/** Takes the gate away: whatever tells a worker to be deaf, or no longer deaf, gets lost on the way. */
export async function loseMutes(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    const post = Worker.prototype.postMessage as (this: Worker, message: unknown, transfer: Transferable[]) => void;
    Worker.prototype.postMessage = function (this: Worker, message: { readonly type?: string }, transfer?: unknown) {
      if (message.type === 'mute' || message.type === 'unmute') return;
      post.call(this, message, Array.isArray(transfer) ? transfer : []);
    };
  });
}
