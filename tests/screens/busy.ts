import { fold } from '../../src/core/job/evolve';
import { planOf } from '../../src/core/job/plan';
import { grouped } from '../../src/core/record/grouped';
import { Bay } from '../browser/bay';
import { openContext } from '../browser/chromium';
import { nextWords } from '../browser/next-words';
import type { Site } from '../browser/site';
import { shipped } from '../core/job/workbench';
import { busyness, cancelEcho, decoding, earWork, talkOn } from './talk';
import { type Act, addWatch, during, fromTap, spread } from './watched';

const PROCEDURE = shipped('practice-plate');
const PLAN = planOf(PROCEDURE);
const ROUNDS = 12;
/** From key to key: quick for somebody at a bench. */
const KEY_MS = 120;
/** From one thing done to the next. */
const BETWEEN_MS = 700;
const EFFECT_MS = 15_000;
const SOUGHT = 'step';

type Kind = 'tap' | 'key' | 'switch of screen' | 'filter';
type Done = Act & { readonly kind: Kind; readonly about: string };

/** The screens worked by hand while somebody beside the microphone talks on and on. */
export async function measureBusy(site: Site) {
  const context = await openContext({ touch: true, serviceWorkers: 'block' });
  try {
    await addWatch(context);
    const bay = new Bay(await context.newPage());
    await bay.wireMicrophone('whole');
    await cancelEcho(bay);
    await bay.open(site.address);
    await bay.talkFast();
    await bay.begin(PROCEDURE.title);
    await bay.armed();
    await talkOn(bay);
    const worked = new Worked(bay);
    const from = await bay.page.evaluate(() => performance.now());
    for (let round = 0; round < ROUNDS; round += 1) {
      await worked.round(round);
    }
    const to = await bay.page.evaluate(() => performance.now());
    return { ...worked.summary, ear: busyness(await earWork(bay), from, to, worked.moments) };
  } finally {
    await context.close();
  }
}

/** What was done by hand, and how long each of it took. */
class Worked {
  private readonly done: Done[] = [];
  /** From the tap to the paint of what it was for, by what was done. */
  private readonly effects: { readonly about: string; readonly ms: number }[] = [];

  constructor(private readonly bay: Bay) {}

  get moments(): readonly number[] {
    return this.done.flatMap(({ interactions }) => interactions.map(({ at }) => at));
  }

  get summary() {
    const all = this.done.flatMap(({ kind, about, interactions }) =>
      interactions.map((one) => ({ ...one, kind, about })),
    );
    const longTasks = this.done.flatMap((act) => act.longTasks);
    return {
      all: spread(all.map(({ ms }) => ms)),
      kinds: spreads(all, ({ kind }) => kind),
      effects: spreads(this.effects, ({ about }) => about),
      longTasks: { count: longTasks.length, worst: Math.round(Math.max(0, ...longTasks)) },
      slowest: all
        .toSorted((a, b) => b.ms - a.ms)
        .slice(0, 8)
        .map(({ kind, about, name, ms }) => `${kind}, ${about}, ${name}: ${ms}`),
    };
  }

  async round(round: number): Promise<void> {
    const { page } = this.bay;
    // The first of the four takes the work on, where a tap may; the last always tells where it is.
    const onward = page.locator('button.fallback-place-0');
    const isOnward = round % 2 === 0 && (await onward.count()) > 0;
    await this.act('tap', 'a button', async () => {
      await this.answered('a command', 'touch', () => (isOnward ? onward : page.locator('.fallback-place-3')).tap());
    });
    await this.act('tap', 'the field', () => page.locator('.talk-field').tap());
    const words = nextWords(fold(PLAN, await this.bay.log())) ?? 'where am i';
    await this.act('key', 'words', () => page.keyboard.type(words, { delay: KEY_MS }));
    await this.act('tap', 'send', async () => {
      await this.answered('typed words', 'typed', () => page.getByRole('button', { name: 'Send' }).tap());
    });
    const [screen, selector] = SCREENS[round % SCREENS.length] ?? SCREENS[0];
    await this.act('tap', 'the list of screens', () => page.getByRole('button', { name: 'Screens' }).tap());
    await this.act('switch of screen', `to ${screen}`, () => this.shown(screen, selector));
    if (screen === 'Record') await this.filter();
    await this.act('switch of screen', 'to the Bench', () => this.shown('Bench', '.bench'));
  }

  private async filter(): Promise<void> {
    const { page } = this.bay;
    for (const name of ['Work', 'Everything'])
      await this.act('filter', name, () => page.getByText(name, { exact: true }).tap());
    await page.locator('.filter input[type=search]').tap();
    await this.act('filter', 'letters', () => page.keyboard.type(SOUGHT, { delay: KEY_MS }));
    await page.locator('.filter input[type=search]').fill('');
  }

  private async act(kind: Kind, about: string, doIt: () => Promise<void>): Promise<void> {
    await this.bay.page.waitForTimeout(BETWEEN_MS);
    await decoding(this.bay);
    this.done.push({ kind, about, ...(await during(this.bay.page, doIt)) });
  }

  private async shown(screen: string, selector: string): Promise<void> {
    const { page } = this.bay;
    const tap = () => page.getByRole('button', { name: screen, exact: true }).tap();
    this.effects.push({ about: `to ${screen}`, ms: await fromTap(page, selector, tap) });
  }

  /** The log must say what was done, and by which way it came. */
  private async answered(about: string, by: 'touch' | 'typed', tap: () => Promise<void>): Promise<void> {
    const { page } = this.bay;
    const before = (await this.bay.log()).length;
    this.effects.push({ about, ms: await fromTap(page, `#app:not([data-entries="${before}"])`, tap) });
    await page
      .waitForFunction(
        ([from, way]) => {
          const { entries } = document.getElementById('app') as unknown as {
            entries: readonly { readonly kind: string; readonly by?: string }[];
          };
          return entries.slice(from).some((e) => e.kind === 'heard' && e.by === way);
        },
        [before, by] as const,
        { timeout: EFFECT_MS },
      )
      .catch(async () => {
        throw new Error(
          `nothing came of what was done by ${by} after entry ${before}: ${JSON.stringify((await this.bay.log()).slice(before))}`,
        );
      });
  }
}

const SCREENS = [
  ['Record', '.book-line'],
  ['Setup', '.setup'],
  ['Jobs', '.jobs'],
  ['Procedures', '.procedure-marks'],
] as const;

const spreads = <One extends { readonly ms: number }>(all: readonly One[], by: (one: One) => string) =>
  Object.fromEntries([...grouped(all, by)].map(([name, some]) => [name, spread(some.map(({ ms }) => ms))]));
