/** A glove that bounces touches twice within this time. */
const BOUNCE_MS = 400;

/**
 * Whether a click is the second touch of one that came before, by the clock of events: what has come up under the hand by
 * the first must not take it. Keys do not bounce: `detail` is 0 when a key pressed a button.
 */
export const isBounce = (event: MouseEvent, before: number): boolean =>
  event.detail > 0 && event.timeStamp - before < BOUNCE_MS;
