import type { Locator, Page } from 'playwright-core';

/** One way of working the screens without a word. Everything it does, it does by keys alone or by taps alone. */
export type Hand = {
  /** Presses a control. */
  readonly press: (control: Locator) => Promise<void>;
  /** Goes to a control without using it. */
  readonly reach: (control: Locator) => Promise<void>;
  /** Puts text into a field, in place of what is there. */
  readonly write: (field: Locator, text: string) => Promise<void>;
  /** Puts a day, "2031-03-04", into a field for days. */
  readonly day: (field: Locator, day: string) => Promise<void>;
  /** Chooses one of several that are all in sight. */
  readonly pick: (radio: Locator) => Promise<void>;
  /** Chooses from a list that is folded away until it is pressed. */
  readonly choose: (list: Locator, words: string) => Promise<void>;
  /** The first of the Bench's four buttons, which takes the work on, whatever its name. */
  readonly on: () => Promise<void>;
};

/** More controls than any screen has: the lines of a long record have hundreds of links. */
const MOST_TABS = 1200;

const isFocused = (control: Locator): Promise<boolean> =>
  control.evaluate((element) => element === document.activeElement);

/** Tab by Tab to a control, as somebody without a mouse must. */
async function tabTo(page: Page, control: Locator): Promise<void> {
  await control.waitFor({ state: 'attached' });
  for (let tabs = 0; tabs < MOST_TABS; tabs++) {
    if (await isFocused(control)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`the keyboard cannot reach ${control}`);
}

export const byKeyboard = (page: Page): Hand => ({
  press: async (control) => {
    await tabTo(page, control);
    await page.keyboard.press('Enter');
  },
  reach: (control) => tabTo(page, control),
  write: async (field, text) => {
    await tabTo(page, field);
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type(text);
  },
  // Month, day and year, as the test's browser has them: it types itself on from one to the next.
  day: async (field, day) => {
    await tabTo(page, field);
    const [year, month, date] = day.split('-');
    await page.keyboard.type(`${month}${date}${year}`);
  },
  // Tab stops at a group once; the arrows go through it.
  pick: async (radio) => {
    const name = await radio.evaluate((element) => (element as HTMLInputElement).name);
    const group = page.locator(`input[type=radio][name="${name}"]`);
    const first = (await group.and(page.locator(':checked')).count()) > 0 ? group.and(page.locator(':checked')) : group;
    await tabTo(page, first.first());
    for (let n = await group.count(); n >= 0 && !(await radio.isChecked()); n--) await page.keyboard.press('ArrowDown');
    if (!(await radio.isChecked())) throw new Error(`the arrows cannot choose ${radio}`);
  },
  // Letters go to the entry that begins with them.
  choose: async (list, words) => {
    await tabTo(page, list);
    await page.keyboard.type(words);
  },
  on: async () => {
    // Away from the field, where keys are letters.
    await tabTo(page, page.getByRole('button', { name: 'Screens' }));
    await page.keyboard.press('PageDown');
  },
});

export const byTouch = (page: Page): Hand => ({
  press: (control) => control.tap(),
  reach: (control) => control.focus(),
  write: async (field, text) => {
    await field.tap();
    await field.fill(text);
  },
  day: (field, day) => field.fill(day),
  pick: (radio) => radio.tap(),
  // The list that a tap unfolds is the system's own, outside the page.
  choose: async (list, words) => {
    await list.selectOption(words);
  },
  on: () => page.locator('.fallback-place-0').tap(),
});
