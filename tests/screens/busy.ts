import { fold } from '../../src/core/job/evolve';
import { planOf } from '../../src/core/job/plan';
import { grouped } from '../../src/core/record/grouped';
import { encodeWav } from '../../src/voice/flite/wav';
import { Bay } from '../browser/bay';
import { openContext } from '../browser/chromium';
import { nextWords } from '../browser/next-words';
import type { Site } from '../browser/site';
import { spoken } from '../browser/speaker';
import { shipped } from '../core/job/workbench';
import { type Act, addWatch, during, spread } from './watched';

const PROCEDURE = shipped('practice-plate');
const PLAN = planOf(PROCEDURE);
/** Four interactions each. */
const ROUNDS = 10;
/** Talk that is meant for nobody, over and over; the ear is deaf to it while our own voice speaks. */
const TALK = [
  'they said on the radio that it would rain from tomorrow afternoon until the end of the week',
  'my neighbour had the same trouble with his old van and it took him a whole month to find it',
  'you can leave the keys with the people in the office if nobody is here by then',
];
/** The recogniser is in the middle of a sentence when the finger comes down. */
const INTO_TALK_MS = 700;
/** So long a reply is waited for; after that it is worked on into it. */
const QUIET_MS = 4_000;
const EFFECT_MS = 15_000;

type Kind = 'tap a button' | 'type words' | 'open a screen' | 'back to the Bench';
type Done = Act & { readonly kind: Kind };

/** The screens worked by hand while somebody beside the microphone talks on and on. */
export async function measureBusy(site: Site) {
  const context = await openContext({ touch: true });
  try {
    await addWatch(context);
    const bay = new Bay(await context.newPage());
    await bay.wireMicrophone();
    await bay.open(site.address);
    await bay.talkFast();
    await bay.begin(PROCEDURE.title);
    await bay.armed();
    await talkOn(bay);
    const done: Done[] = [];
    for (let round = 0; round < ROUNDS; round += 1) done.push(...(await oneRound(bay, round)));
    const log = await bay.log();
    const slowest = done.toSorted((a, b) => b.worstMs - a.worstMs).slice(0, 5);
    const longTasks = done.flatMap((act) => act.longTasks);
    return {
      all: spread(done.map(({ worstMs }) => worstMs)),
      kinds: Object.fromEntries(
        [...grouped(done, ({ kind }) => kind)].map(([kind, acts]) => [kind, spread(acts.map((a) => a.worstMs))]),
      ),
      longTasks: { count: longTasks.length, worst: Math.round(Math.max(0, ...longTasks)) },
      slowest: slowest.map(({ kind, worst, worstMs }) => `${kind}, ${worst}: ${worstMs}`),
      /** Utterances the recogniser came to an end with meanwhile: what shows that it was at work. */
      decoded: log.filter((e) => e.kind === 'rejected' || (e.kind === 'heard' && e.by === 'voice')).length,
    };
  } finally {
    await context.close();
  }
}

/** Starts the talk, which goes round until the page is closed. */
async function talkOn({ page }: Bay): Promise<void> {
  const clips: string[] = [];
  for (const text of TALK) clips.push(Buffer.from(encodeWav(await spoken(text, 'awb'))).toString('base64'));
  await page.evaluate((wavs) => {
    const { playClip } = window as unknown as { playClip: (wav: string) => Promise<void> };
    void (async () => {
      for (;;) {
        for (const wav of wavs) {
          await playClip(wav);
          // Breath: where the recogniser comes to an end with what it heard.
          await new Promise((done) => setTimeout(done, 500));
        }
      }
    })();
  }, clips);
}

async function oneRound(bay: Bay, round: number): Promise<readonly Done[]> {
  const { page } = bay;
  const done: Done[] = [];
  const act = async (kind: Kind, doIt: () => Promise<void>): Promise<void> => {
    // While our own voice speaks the ear is deaf, and has nothing to do.
    await page.waitForSelector('#app[data-voice="quiet"]', { timeout: QUIET_MS }).catch(() => undefined);
    await page.waitForTimeout(INTO_TALK_MS);
    done.push({ kind, ...(await during(page, doIt)) });
  };
  await act('tap a button', async () => {
    const before = (await bay.log()).length;
    // The first of the four takes the work on, where a tap may; the last always tells where it is.
    const onward = page.locator('button.fallback-place-0');
    const isOnward = round % 2 === 0 && (await onward.count()) > 0;
    await (isOnward ? onward : page.locator('.fallback-place-3')).tap();
    await written(bay, before, 'touch');
  });
  await act('type words', async () => {
    const log = await bay.log();
    const before = log.length;
    await page.locator('.talk-field').tap();
    await page.keyboard.type(nextWords(fold(PLAN, log)) ?? 'where am i');
    await page.getByRole('button', { name: 'Send' }).tap();
    await written(bay, before, 'typed');
  });
  const [screen, selector] = SCREENS[round % SCREENS.length] ?? SCREENS[0];
  await act('open a screen', async () => {
    await page.getByRole('button', { name: 'Screens' }).tap();
    await page.getByRole('button', { name: screen, exact: true }).tap();
    await page.waitForSelector(selector, { timeout: EFFECT_MS });
  });
  await act('back to the Bench', async () => {
    await page.getByRole('button', { name: 'Bench', exact: true }).tap();
    await page.waitForSelector('.bench', { timeout: EFFECT_MS });
  });
  return done;
}

const SCREENS = [
  ['Record', '.book-line'],
  ['Setup', '.setup'],
  ['Jobs', '.jobs'],
  ['Procedures', '.procedure-marks'],
] as const;

/** The log must say what was done, and by which way it came. */
async function written(bay: Bay, before: number, by: 'touch' | 'typed'): Promise<void> {
  await bay.page
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
    .catch(() => {
      throw new Error(`nothing came of what was done by ${by} after entry ${before}`);
    });
}
