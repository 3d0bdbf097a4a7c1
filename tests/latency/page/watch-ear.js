// Set before the ear's own worker script: notes when a block of sound came in and when the answer to it went out.
{
  const now = () => performance.timeOrigin + performance.now();
  const inlet = Object.getOwnPropertyDescriptor(MessagePort.prototype, 'onmessage');
  const post = self.postMessage.bind(self);
  let cameIn = 0;
  Object.defineProperty(MessagePort.prototype, 'onmessage', {
    ...inlet,
    set(listener) {
      inlet.set.call(this, (event) => {
        cameIn = now();
        listener.call(this, event);
      });
    },
  });
  self.postMessage = (message, ...rest) =>
    post(
      message.type === 'heard' || message.type === 'rejected'
        ? { ...message, watched: { endpoint: cameIn, decoded: now() } }
        : message,
      ...rest,
    );
}
