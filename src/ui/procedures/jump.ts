/** Brings a part of the page into sight and gives it the focus, so that keys and whoever reads aloud go on from there. */
export function jumpTo(id: string): void {
  const part = document.getElementById(id);
  part?.scrollIntoView({ block: 'start' });
  part?.focus({ preventScroll: true });
}
