import { grouped } from '../../src/core/record/grouped';
import { encodeWav } from '../../src/voice/flite/wav';
import { Bay } from '../browser/bay';
import { openContext } from '../browser/chromium';
import type { Site } from '../browser/site';
import { spoken } from '../browser/speaker';
import { type Act, addWatch, during, spread } from './watched';

const PROCEDURE = 'Practice plate';
/** Four interactions each. */
const ROUNDS = 10;
/** Talk that is meant for nobody, without a pause: the ear decodes all of it and takes none. */
const TALK = [
  'they said on the radio that it would rain from tomorrow afternoon until the end of the week',
  'my neighbour had the same trouble with his old van and it took him a whole month to find it',
  'you can leave the keys with the people in the office if nobody is here by then',
];
/** The recogniser is in the middle of a sentence when the finger comes down. */
const INTO_TALK_MS = 700;
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
    await bay.begin(PROCEDURE);
    await bay.armed();
    await talkOn(bay);
    const done: Done[] = [];
    for (let round = 0; round < ROUNDS; round += 1) done.push(...(await oneRound(bay, round)));
    const log = await bay.log();
    const longTasks = done.flatMap((act) => act.longTasks);
    return {
      all: spread(done.map(({ worstMs }) => worstMs)),
      kinds: Object.fromEntries(
        [...grouped(done, ({ kind }) => kind)].map(([kind, acts]) => [kind, spread(acts.map((a) => a.worstMs))]),
      ),
      longTasks: { count: longTasks.length, worst: Math.round(Math.max(0, ...longTasks)) },
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
    const roundAndRound = async () => {
      for (;;) for (const wav of wavs) await playClip(wav);
    };
    void roundAndRound();
  }, clips);
}

async function oneRound(bay: Bay, round: number): Promise<readonly Done[]> {
  const { page } = bay;
  const done: Done[] = [];
  const act = async (kind: Kind, doIt: () => Promise<void>): Promise<void> => {
    await page.waitForTimeout(INTO_TALK_MS);
    done.push({ kind, ...(await during(page, doIt)) });
  };
  // The last of the four tells where the work is, the first takes it on.
  await act('tap a button', async () => {
    const before = (await bay.log()).length;
    await page.locator(round % 2 === 0 ? '.fallback-place-0' : '.fallback-place-3').tap();
    await written(bay, before, 'touch');
  });
  await act('type words', async () => {
    const before = (await bay.log()).length;
    await page.locator('.talk-field').tap();
    await page.keyboard.type('where am i');
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
      throw new Error(`nothing came of what was done by ${by}`);
    });
}
