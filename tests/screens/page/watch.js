// Runs in the page before the app: what the browser itself says of taps, long tasks and frames. Milliseconds throughout.
{
  const events = [];
  const longTasks = [];
  new PerformanceObserver((list) => {
    for (const { startTime, duration } of list.getEntries()) longTasks.push({ startTime, duration });
  }).observe({ type: 'longtask', buffered: true });

  // The ear's worker tells what it did, by page/watch-ear.js, in milliseconds since 1970: brought to this page's clock.
  const ear = {
    work: [],
    utterances: [],
    /** The share of a stretch of time in which it worked, 0..1. */
    share: (from, to) =>
      ear.work.reduce((sum, block) => sum + Math.max(0, Math.min(to, block.to) - Math.max(from, block.from)), 0) /
      (to - from),
  };
  const Real = Worker;
  window.Worker = class extends Real {
    constructor(...args) {
      super(...args);
      this.addEventListener('message', ({ data }) => {
        for (const [from, to] of data.work ?? [])
          ear.work.push({ from: from - performance.timeOrigin, to: to - performance.timeOrigin });
        if (data.type === 'heard' || data.type === 'rejected') ear.utterances.push({ endedAt: performance.now() });
      });
    }
  };

  const frame = () => new Promise(requestAnimationFrame);
  /** The first moment after a frame was handed on to be painted. */
  const painted = async () => {
    await frame();
    await new Promise((done) => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = done;
      port2.postMessage(null);
    });
    return performance.now();
  };

  // Not the browser's own event timing: it gives the next frame whose change was asked for after the event was over, and a
  // letter's own frame is asked for while the key is still being handled. The key would get the time of whatever changes
  // next, a second later when nothing else moves.
  for (const name of ['pointerdown', 'click', 'keydown'])
    addEventListener(
      name,
      ({ timeStamp }) =>
        void painted().then((at) => events.push({ name, startTime: timeStamp, duration: at - timeStamp })),
      true,
    );

  let tapped = null;
  addEventListener('pointerdown', ({ timeStamp }) => (tapped = timeStamp), true);
  const isInSight = (element, area) => {
    const { top, bottom } = element.getBoundingClientRect();
    const box = area.getBoundingClientRect();
    return bottom > box.top && top < box.bottom;
  };
  const page = () => document.querySelector('.book-page');
  const rows = () => [...document.querySelectorAll('.book-rows > li')];

  window.screensWatch = {
    events,
    longTasks,
    ear,
    /** From the tap that comes next to the paint of what this finds. Begun before the tap. */
    async fromTap(selector) {
      tapped = null;
      while (tapped === null || !document.querySelector(selector)) await frame();
      return (await painted()) - tapped;
    },
    /** Scrolls a height of the page in each frame, from the top to the bottom; how far the frames lay apart. */
    async scrollThrough() {
      const area = page();
      const apart = [];
      let blank = 0;
      area.scrollTop = 0;
      let before = await frame();
      for (let stuck = 0; stuck < 20; ) {
        const from = area.scrollTop;
        area.scrollTop = from + area.clientHeight;
        const now = await frame();
        apart.push(now - before);
        before = now;
        if (!rows().some((row) => isInSight(row, area))) blank += 1;
        // Heights are measured as rows are drawn: the end is where nothing is left to scroll for a while.
        stuck = area.scrollTop === from ? stuck + 1 : 0;
      }
      return { apart: apart.slice(0, -20), blank, last: rows().at(-1)?.textContent ?? '' };
    },
    /** Goes to a phase far down the list; from the choice to the paint of the frame in which its heading is at the top. */
    async jumpToPhase() {
      const area = page();
      const select = document.querySelector('.filter select');
      const option = select.options[Math.ceil(select.options.length * 0.75)];
      const began = performance.now();
      select.value = option.value;
      select.dispatchEvent(new Event('change', { bubbles: true }));
      const off = () => {
        const headings = rows().filter((row) => row.textContent === option.textContent);
        return Math.min(
          ...headings.map((row) => Math.abs(row.getBoundingClientRect().top - area.getBoundingClientRect().top)),
        );
      };
      while (off() > 3) {
        await frame();
        if (performance.now() - began > 10_000) return { ms: null, words: `${option.textContent}, ${off()} px off` };
      }
      return { ms: (await painted()) - began, words: option.textContent };
    },
  };
}
