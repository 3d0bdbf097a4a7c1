// Set before the ear's own worker script: how long each block of sound kept it at work goes out with its next message.
{
  const now = () => performance.timeOrigin + performance.now();
  const inlet = Object.getOwnPropertyDescriptor(MessagePort.prototype, 'onmessage');
  const post = self.postMessage.bind(self);
  let work = [];
  Object.defineProperty(MessagePort.prototype, 'onmessage', {
    ...inlet,
    set(listener) {
      inlet.set.call(this, (event) => {
        const began = now();
        listener.call(this, event);
        work.push([began, now()]);
      });
    },
  });
  self.postMessage = (message, ...rest) => {
    post(message.type === undefined ? message : { ...message, work }, ...rest);
    work = [];
  };
}
