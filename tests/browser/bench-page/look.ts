/** A Bench as it is drawn: nothing is wrong with it where every list is empty. */
export type Look = {
  /** Text or a part of the screen that is not whole in sight. */
  readonly cut: readonly string[];
  /** Parts that scroll inside themselves because not all fits, and by how many pixels. */
  readonly scrolls: readonly string[];
  /** Buttons under 22 mm, each way, or out of sight. */
  readonly small: readonly string[];
  /** Where its areas lie. */
  readonly areas: string;
  /** In pixels; null where there is no such text. */
  readonly fontSizes: { readonly value: number | null; readonly line: number | null };
};

/** Half a pixel of rounding is nothing that anybody sees. */
const SLACK = 1;

/** 22 mm on a ten-inch tablet, 5.94 pixels each. */
const LEAST_BUTTON = 22 * 5.94 - 0.5;

const named = (element: Element): string => `.${element.classList[0] ?? element.tagName.toLowerCase()}`;

const isWithin = (inner: DOMRect, outer: DOMRect): boolean =>
  inner.left >= outer.left - SLACK &&
  inner.right <= outer.right + SLACK &&
  inner.top >= outer.top - SLACK &&
  inner.bottom <= outer.bottom + SLACK;

const isApart = (a: DOMRect, b: DOMRect): boolean =>
  a.left >= b.right - SLACK || a.right <= b.left + SLACK || a.top >= b.bottom - SLACK || a.bottom <= b.top + SLACK;

/** The boxes of the lines in which the texts of an element are set. */
function* lines(within: Element): Generator<{ readonly text: string; readonly owner: Element; readonly box: DOMRect }> {
  const walker = document.createTreeWalker(within, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const text = node.textContent?.trim() ?? '';
    const owner = node.parentElement;
    if (text === '' || !owner) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const box of range.getClientRects()) yield { text, owner, box };
  }
}

/** Where an area scrolls by design, what is in it is reached: it is cut only by areas around that do not scroll. */
const scrolls = (element: Element): boolean => /auto|scroll/.test(getComputedStyle(element).overflowY);

export function look(): Look {
  const bench = document.querySelector('.bench');
  if (!bench) throw new Error('no Bench is drawn');
  return {
    cut: [...hidden(bench), ...halfSaid(bench), ...outside(bench), ...cornered(bench)],
    scrolls: scrolling(bench),
    small: smallButtons(bench),
    areas: areas(bench),
    fontSizes: { value: fontSize(bench, '.work-value'), line: fontSize(bench, '.work-line') },
  };
}

const areas = (bench: Element): string =>
  [...bench.children]
    .filter((area) => !area.matches('dialog'))
    .map((area) => {
      const { left, top, width, height } = area.getBoundingClientRect();
      return `${named(area)} ${[left, top, width, height].map(Math.round).join(' ')}`;
    })
    .join(', ');

function fontSize(bench: Element, selector: string): number | null {
  const element = bench.querySelector(selector);
  return element && Number.parseFloat(getComputedStyle(element).fontSize);
}

/** Each button and each empty place for one, by its size: width, then height. */
const smallButtons = (bench: Element): readonly string[] =>
  [...bench.querySelectorAll('.fallback > *')].flatMap((button) => {
    const { width, height, top, left, bottom, right } = button.getBoundingClientRect();
    const isInSight = top >= 0 && left >= 0 && bottom <= innerHeight && right <= innerWidth;
    if (Math.min(width, height) >= LEAST_BUTTON && isInSight) return [];
    return [`${button.className} ${Math.round(width)} x ${Math.round(height)}${isInSight ? '' : ', not in sight'}`];
  });

/** Content that is larger than its box, in a box that hides what does not fit. The list of words hides whole sentences. */
const hidden = (bench: Element): readonly string[] =>
  [bench, ...bench.querySelectorAll('*:not(.words-list)')].flatMap((element) => {
    const { overflowX, overflowY } = getComputedStyle(element);
    const wide = element.scrollWidth - element.clientWidth;
    const high = element.scrollHeight - element.clientHeight;
    return [
      ...(/hidden|clip/.test(overflowX) && wide > SLACK ? [`${named(element)} ${wide} too wide`] : []),
      ...(/hidden|clip/.test(overflowY) && high > SLACK ? [`${named(element)} ${high} too high`] : []),
    ];
  });

/** Sentences of which a part is in sight, or that are not in sight and on no sheet; and a list that shows none. */
function halfSaid(bench: Element): readonly string[] {
  const list = bench.querySelector('.words-list');
  if (!list) return [];
  const room = list.getBoundingClientRect();
  const sentences = [...list.children].map((one) => {
    const boxes = [...one.getClientRects()];
    return {
      text: one.textContent,
      all: boxes.every((b) => isWithin(b, room)),
      none: boxes.every((b) => isApart(b, room)),
    };
  });
  const isAllThere = bench.querySelector('.words-all') !== null;
  return [
    ...sentences.filter(({ all, none }) => !all && !(none && isAllThere)).map(({ text }) => `half said: ${text}`),
    ...(sentences.some(({ all }) => all) ? [] : ['no sentence in sight']),
  ];
}

const scrolling = (bench: Element): readonly string[] =>
  [bench.parentElement, ...bench.querySelectorAll('*')].flatMap((element) => {
    if (!element || !scrolls(element)) return [];
    const over = Math.max(element.scrollHeight - element.clientHeight, element.scrollWidth - element.clientWidth);
    return over > SLACK ? [`${named(element)} ${over}`] : [];
  });

/** Text that runs out of the area it belongs to, or off the screen, where nothing brings it back. */
function outside(bench: Element): readonly string[] {
  const found: string[] = [];
  for (const area of bench.children) {
    if (area.matches('dialog, .bench-words')) continue;
    const room = area.getBoundingClientRect();
    for (const { text, owner, box } of lines(area)) {
      const scroller = scrollerOf(owner, area);
      if (scroller ? scroller.scrollWidth > scroller.clientWidth + SLACK : !isWithin(box, room))
        found.push(`${named(area)} "${text}"`);
    }
  }
  return found;
}

function scrollerOf(element: Element, area: Element): Element | null {
  for (let e: Element | null = element; e && e !== area.parentElement; e = e.parentElement) if (scrolls(e)) return e;
  return null;
}

/** Words in the cut corners of stop: the corners are 18 hundredths wide and 22 high. */
const cornered = (bench: Element): readonly string[] =>
  [...bench.querySelectorAll('.fallback-button')].flatMap((button) => {
    const room = button.getBoundingClientRect();
    const corner = button.matches('.fallback-stop') ? { x: 0.18 * room.width, y: 0.22 * room.height } : { x: 0, y: 0 };
    return [...lines(button)].flatMap(({ text, box }) => {
      const x = Math.min(box.left - room.left, room.right - box.right);
      const y = Math.min(box.top - room.top, room.bottom - box.bottom);
      const isCut = x < -SLACK || y < -SLACK || (corner.x > 0 && x / corner.x + y / corner.y < 1);
      return isCut ? [`button "${text}"`] : [];
    });
  });
