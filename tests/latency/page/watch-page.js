// Set before the app's own scripts: taps the microphone and the reply bus, and notes what passes the app's edges.
{
  const now = () => performance.timeOrigin + performance.now();
  const watch = { ready: null, loadAsked: null, seen: null, tap: null, whenTapped: null };
  const fresh = () => ({ answers: [], written: [], asked: [], rendered: [], played: [] });
  watch.seen = fresh();

  const connect = AudioNode.prototype.connect;
  const made = new Map();
  const tapOf = (context) => {
    if (!made.has(context)) {
      made.set(
        context,
        context.audioWorklet.addModule('./latency-tap.js').then(() => {
          watch.tap = new AudioWorkletNode(context, 'latency-tap', {
            numberOfInputs: 2,
            numberOfOutputs: 0,
            channelCount: 1,
            channelCountMode: 'explicit',
          });
          return watch.tap;
        }),
      );
    }
    return made.get(context);
  };
  let bus = null;
  AudioNode.prototype.connect = function (target, ...rest) {
    if (target instanceof AudioDestinationNode) bus = this;
    if (this instanceof MediaStreamAudioSourceNode && target instanceof AudioWorkletNode)
      void tapOf(this.context).then((tap) => connect.call(this, tap, 0, 0));
    // Words come through a gain of their own; an earcon is put on the bus as it is.
    if (this instanceof GainNode && target === bus && watch.tap) connect.call(this, watch.tap, 0, 1);
    return connect.call(this, target, ...rest);
  };

  const Real = Worker;
  window.Worker = class extends Real {
    constructor(...args) {
      super(...args);
      this.addEventListener('message', ({ data }) => {
        if (data.type === 'ready' && 'msToLoad' in data && this.isEar) watch.ready = { at: now(), ms: data.msToLoad };
        if (data.watched) watch.seen.answers.push({ ...data, arrived: now() });
        if (data.type === 'rendered') watch.seen.rendered.push(now());
      });
    }
    postMessage(message, ...rest) {
      if (message.type === 'load' && message.modelBase) {
        this.isEar = true;
        watch.loadAsked = now();
      }
      if (message.type === 'render') watch.seen.asked.push({ at: now(), text: message.utterance.text });
      super.postMessage(message, ...rest);
    }
  };

  const transaction = IDBDatabase.prototype.transaction;
  IDBDatabase.prototype.transaction = function (...args) {
    const begun = transaction.apply(this, args);
    if (args[1] === 'readwrite') begun.addEventListener('complete', () => watch.seen.written.push(now()));
    return begun;
  };

  const addressed = URL.createObjectURL;
  URL.createObjectURL = (blob) => {
    if (blob.type === 'audio/wav') watch.seen.played.push(now());
    return addressed.call(URL, blob);
  };

  /** Loudness of each stretch of so many frames, as its root mean square. */
  const loudness = (samples, frames) =>
    Array.from({ length: Math.floor(samples.length / frames) }, (_, i) => {
      let sum = 0;
      for (let k = i * frames; k < (i + 1) * frames; k++) sum += samples[k] ** 2;
      return Math.sqrt(sum / frames);
    });
  const joined = (blocks) => {
    const all = new Float32Array(blocks.length * 128);
    blocks.forEach((block, i) => {
      all.set(block, i * 128);
    });
    return all;
  };

  watch.begin = () => {
    watch.seen = fresh();
    watch.tap.port.postMessage('begin');
  };

  /** What came of one utterance: frames of its last speech and of the first sample of the reply, and all edges passed. */
  watch.end = async (speechDb) => {
    const kept = await new Promise((resolve) => {
      watch.tap.port.onmessage = ({ data }) => resolve(data);
      watch.tap.port.postMessage('end');
    });
    const { sampleRate, first, epoch } = kept;
    const block = Math.round(sampleRate / 200);
    const microphone = loudness(joined(kept.microphone), block);
    const loudest = microphone.reduce((most, x) => Math.max(most, x), 0);
    const last = microphone.findLastIndex((x) => x > loudest * 10 ** (speechDb / 20));
    const reply = joined(kept.replies).findIndex((x) => Math.abs(x) > 1e-3);
    const at = (frame) => epoch + (1000 * (first + frame)) / sampleRate;
    return {
      ...watch.seen,
      speechEnd: at((last + 1) * block),
      replyBegin: reply < 0 ? null : at(reply),
    };
  };
  window.latencyWatch = watch;
}
