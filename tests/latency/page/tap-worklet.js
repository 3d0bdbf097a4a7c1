/**
 * Runs on the app's own audio thread and keeps what passes there: on its first input what the microphone gave, on its
 * second what the reply bus was given in words. Both carry the same frame numbers, so a distance between them is exact.
 */
class Tap extends AudioWorkletProcessor {
  #kept = null;

  constructor() {
    super();
    this.port.onmessage = ({ data }) => {
      if (data === 'begin') this.#kept = { first: currentFrame, microphone: [], replies: [], epoch: Infinity };
      else this.#hand();
    };
  }

  process([microphone, replies]) {
    const kept = this.#kept;
    if (!kept) return true;
    const silence = new Float32Array(128);
    kept.microphone.push(microphone[0]?.slice() ?? silence);
    kept.replies.push(replies[0]?.slice() ?? silence);
    // When a frame passed here at the earliest, so that other threads' clocks can be laid beside frame numbers.
    kept.epoch = Math.min(kept.epoch, Date.now() - (1000 * currentFrame) / sampleRate);
    return true;
  }

  #hand() {
    const kept = this.#kept;
    this.#kept = null;
    if (kept) this.port.postMessage({ ...kept, sampleRate });
  }
}

registerProcessor('latency-tap', Tap);
