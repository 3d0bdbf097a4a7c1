// Runs in the page before the app: what the browser itself says of taps, long tasks and frames. Milliseconds throughout.
{
  const events = [];
  const longTasks = [];
  const options = { type: 'event', durationThreshold: 16, buffered: true };
  new PerformanceObserver((list) => {
    for (const { interactionId, name, startTime, duration } of list.getEntries())
      if (interactionId > 0) events.push({ name, startTime, duration });
  }).observe(options);
  new PerformanceObserver((list) => {
    for (const { startTime, duration } of list.getEntries()) longTasks.push({ startTime, duration });
  }).observe({ type: 'longtask', buffered: true });

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
