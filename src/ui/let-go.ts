/**
 * Gives the focus back to the page after a finger or a mouse has pressed a button. Otherwise the next press of a pedal
 * that sends Enter or a space would press that button again. `detail` is 0 when a key pressed it: then the focus stays.
 */
export function letGo(event: MouseEvent): void {
  if (event.detail > 0 && event.currentTarget instanceof HTMLElement) event.currentTarget.blur();
}
