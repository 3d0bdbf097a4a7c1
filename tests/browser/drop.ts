import type { Page } from 'playwright-core';

export type Dropped = { readonly name: string; readonly text: string };

/** Holds files over the middle of the page, as another program does, and lets them go when it has said that it takes them. */
export async function drop(page: Page, says: string, files: readonly Dropped[]): Promise<void> {
  const send = (kind: 'dragover' | 'drop') =>
    page.evaluate(
      ({ kind, files }) => {
        const dataTransfer = new DataTransfer();
        for (const { name, text } of files) dataTransfer.items.add(new File([text], name));
        const event = new DragEvent(kind, { dataTransfer, bubbles: true, cancelable: true });
        document.elementFromPoint(innerWidth / 2, innerHeight / 2)?.dispatchEvent(event);
        if (!event.defaultPrevented) throw new Error(`nobody takes the ${kind}`);
      },
      { kind, files },
    );
  // A screen that is only just there listens a frame later.
  await page.waitForSelector('h1');
  const said = page.getByText(says);
  for (let tries = 0; tries < 50 && !(await said.isVisible()); tries++) await send('dragover');
  await said.waitFor();
  await send('drop');
  await said.waitFor({ state: 'hidden' });
}
