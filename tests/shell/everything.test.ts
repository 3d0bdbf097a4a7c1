import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { EntryBody } from '../../src/core/job/entry';
import { heardClipId } from '../../src/core/log/heard-clip';
import type { LogStore } from '../../src/core/log/log-store';
import { atOnce } from '../../src/core/pieces';
import { Everything } from '../../src/shell/everything/everything';
import { JobImports } from '../../src/shell/job/imports';
import { Library } from '../../src/shell/library';
import { NoticeBoard } from '../../src/shell/notice-board';
import { Exports } from '../../src/shell/record/exports';
import { DEFAULT_SETTINGS } from '../../src/shell/setup/settings';
import { keepProfile, readShelf } from '../../src/shell/setup/voice-shelf';
import { printing } from '../../src/store/hand-over';
import { sha256Hex } from '../../src/store/hash';
import { memoryStore } from '../../src/store/memory-store';
import type { Settings } from '../../src/ui/setup/settings';
import { say } from './fakes';
import { keptProfile } from './kept-profile';
import { BEGUN, plateJob } from './plate-job';

const plate = readFileSync('procedures/practice-plate.yaml', 'utf8');
const own = plate.replace('id: practice-plate', 'id: own-plate');
const wrench = {
  id: 'long',
  say: 'long wrench',
  unit: 'N·m' as const,
  least: 40,
  most: 200,
  graduation: 2,
  calibrationDue: '2031-03-04',
  dropped: false,
};
const profile = keptProfile('v', 'Brandt');
const picture = { id: 'p1', mime: 'image/jpeg', bytes: Uint8Array.of(1, 2, 255) };

/** A machine with its store, and the ways a file leaves and comes. */
/** No time passes, so nothing pauses. */
const breathing = { now: () => 0, after: () => () => undefined };

function machine() {
  const store = memoryStore();
  const box = { settings: DEFAULT_SETTINGS, saved: '', shares: [] as number[] };
  const notices = new NoticeBoard(() => undefined);
  const library = new Library('en', store, [], () => undefined);
  const save = (_: string, text: string | readonly string[]) => {
    box.saved = [text].flat().join('');
  };
  const words = { say, show: () => '' };
  const everything = new Everything({
    store,
    now: () => Date.UTC(2031, 2, 4),
    save,
    library,
    settings: () => box.settings,
    change: async (settings: Settings) => {
      box.settings = settings;
    },
    exports: async () => new Exports(store, save, words, notices, breathing),
    say,
    notices,
  });
  const shared = (share: number) => void box.shares.push(share);
  const imports = new JobImports(
    store,
    sha256Hex,
    'en',
    say,
    notices,
    { isAllowed: () => true },
    async () => undefined,
    (...file) => everything.take(...file, shared),
    breathing,
  );
  const told = () => notices.shown.map(({ id, text }) => `${id}: ${text}`);
  const take = (text: string) => imports.take(new File([text], 'all.json'));
  return { store, box, notices, library, everything, imports, told, take, save: () => everything.save(null, shared) };
}

async function adopt(store: LogStore, bodies: readonly EntryBody[], id = 'j'): Promise<void> {
  const { card, texts } = plateJob(bodies);
  const entries = texts.map((text) => ({ ...JSON.parse(text), text }));
  await store.adopt({ ...card, id }, entries, [], null);
}

async function full() {
  const m = machine();
  await adopt(m.store, BEGUN);
  await m.store.putBlob('j', picture);
  await m.store.putBlob('j', { ...picture, id: heardClipId({ seq: 1, at: 1 }), mime: 'audio/wav' });
  await m.library.bring(own, 'own.yaml');
  await keepProfile(m.store, profile);
  m.box.settings = {
    ...DEFAULT_SETTINGS,
    people: ['Brandt'],
    wrenches: [wrench],
    theme: 'dim',
    terse: true,
    microphone: 'a1',
    microphoneName: 'Headset',
    keepHeard: true,
    language: 'fr',
  };
  await m.save();
  return m;
}

/** The saved file after a change. */
function edited(text: string, change: (file: Record<string, unknown> & { jobs: never[] }) => void): string {
  const file = JSON.parse(text);
  change(file);
  return JSON.stringify(file);
}

describe('everything in one file', () => {
  test('arrives whole on a machine that had nothing: jobs with pictures, procedures, people, wrenches, voices, settings', async () => {
    const from = await full();
    const to = machine();
    await to.take(from.box.saved);
    expect(await to.store.read('j')).toEqual(await from.store.read('j'));
    expect(await to.store.blobs('j')).toEqual({ ok: true, value: [picture] });
    expect(to.library.own).toEqual([{ file: 'own.yaml', text: own }]);
    expect((await readShelf(to.store)).profiles).toEqual([profile]);
    // What belongs to the other machine, and what each is asked anew, did not come along.
    const { people, wrenches, theme, terse } = from.box.settings;
    expect(to.box.settings).toEqual({ ...DEFAULT_SETTINGS, people, wrenches, theme, terse });
    expect(to.told()).toEqual([
      `everything: ${say('everything-taken', { file: 'all.json', jobs: 1, procedures: 1, people: 1, wrenches: 1, voices: 1, settings: 2 })}`,
    ]);
    expect(to.box.shares).toEqual([0, 1]);
  });

  test('is told with its name and what is in it', async () => {
    const from = await full();
    expect(from.told()).toEqual([
      `everything: ${say('everything-saved', { file: 'wrenchside-2031-03-04.json', jobs: 1, procedures: 1, voices: 1 })}`,
    ]);
    expect(JSON.parse(from.box.saved)).toMatchObject({ format: 'wrenchside-everything', version: 1 });
  });

  test('from a machine that has nothing is a sound file too', async () => {
    const from = machine();
    await from.save();
    const to = machine();
    await to.take(from.box.saved);
    expect(to.told().join()).toContain('jobs 0');
  });

  test('taken in once more changes nothing', async () => {
    const from = await full();
    const to = machine();
    await to.take(from.box.saved);
    const before = to.box.settings;
    await to.take(from.box.saved);
    expect(to.box.settings).toEqual(before);
    expect(to.told()).toEqual([
      `everything: ${say('everything-taken', { file: 'all.json', jobs: 0, procedures: 0, people: 0, wrenches: 0, voices: 0, settings: 0 })}`,
    ]);
  });

  test('leaves out a job that cannot be read, names it, and brings the others', async () => {
    const from = await full();
    await adopt(from.store, BEGUN, 'other');
    const { read } = from.store;
    const broken: LogStore = {
      ...from.store,
      read: async (id) => (id === 'other' ? { ok: false, error: { code: 'storage-failed', detail: '' } } : read(id)),
    };
    Object.assign(from.store, broken);
    await from.save();
    expect(JSON.parse(from.box.saved).jobs).toHaveLength(1);
    expect(from.told().join()).toContain(`“Plate”: ${say('storage-failed')}`);
  });
});

describe('what is here already', () => {
  test('stays: another text, other marks, another reading aloud, other choices; and each is told', async () => {
    const from = await full();
    const to = machine();
    const text = own.replace('edition: ', 'edition: ours, ');
    await to.library.bring(text, 'own.yaml');
    await keepProfile(to.store, { ...profile, id: 'mine' });
    to.box.settings = { ...DEFAULT_SETTINGS, wrenches: [{ ...wrench, id: 'w', most: 210 }], theme: 'day' };
    await to.take(from.box.saved);
    expect(to.library.own).toEqual([{ file: 'own.yaml', text }]);
    expect((await readShelf(to.store)).profiles.map(({ id }) => id)).toEqual(['mine']);
    expect(to.box.settings).toMatchObject({ theme: 'day', wrenches: [{ id: 'w', most: 210 }], terse: true });
    const all = to.told().join();
    expect(all).toContain('is here in another text');
    expect(all).toContain(say('everything-other-wrench', { wrench: 'long wrench' }));
    expect(all).toContain('that reading stays');
    expect(all).toContain(say('everything-settings-stay'));
  });

  test('a job that parted is refused until the person has chosen, one after the other', async () => {
    const from = machine();
    const mine: EntryBody = { kind: 'step-done', step: 'clamp' };
    const theirs: EntryBody = { kind: 'step-skipped', step: 'clamp' };
    const to = machine();
    // A log names its own job, so that two jobs are two logs.
    for (const id of ['a', 'b']) {
      const begun = BEGUN.map((body) => (body.kind === 'job-started' ? { ...body, job: id } : body));
      await adopt(from.store, [...begun, theirs], id);
      await adopt(to.store, [...begun, mine], id);
    }
    await from.save();
    await to.take(from.box.saved);
    const logOf = async (m: typeof to, id: string) => {
      const job = await m.store.read(id);
      return job.ok ? job.value.texts : [];
    };
    const before = { a: await logOf(to, 'a'), b: await logOf(to, 'b') };
    const forks = () => to.notices.shown.filter(({ id }) => id === 'fork');
    expect(forks()).toHaveLength(1);
    await to.imports.settle('here');
    expect(forks()).toHaveLength(1);
    expect([await logOf(to, 'a'), await logOf(to, 'b')]).toEqual([before.a, before.b]);
    await to.imports.settle('file');
    expect(forks()).toHaveLength(0);
    const after = [await logOf(to, 'a'), await logOf(to, 'b')];
    const theirLogs = [await logOf(from, 'a'), await logOf(from, 'b')];
    expect(after.filter((log, at) => log.join() === theirLogs[at]?.join())).toHaveLength(1);
  });
});

describe('a damaged file of everything', () => {
  test.each([
    { what: 'cut short', edit: (text: string) => text.slice(0, -40), told: 'no JSON text' },
    { what: 'of a newer edition', edit: (text: string) => text.replace('"version": 1', '"version": 2'), told: 'newer' },
    {
      what: 'without its jobs',
      edit: (text: string) => edited(text, (f) => Reflect.deleteProperty(f, 'jobs')),
      told: '/jobs',
    },
    {
      what: 'with settings that are a list',
      edit: (text: string) => edited(text, (f) => Object.assign(f, { settings: [] })),
      told: '/settings',
    },
  ])('$what is refused whole, and it is told where', async ({ edit, told }) => {
    const from = await full();
    const to = machine();
    await to.take(edit(from.box.saved));
    expect(to.told()).toHaveLength(1);
    expect(to.told().join()).toContain(told);
    expect(await to.store.jobs()).toEqual({ ok: true, value: [] });
    expect(to.box.settings).toEqual(DEFAULT_SETTINGS);
  });

  test('with one damaged part in each list brings the rest, and tells the place of each', async () => {
    const from = await full();
    const bad = edited(from.box.saved, (file) => {
      const { texts, ...job } = plateJob(BEGUN);
      const broken = atOnce(
        printing(
          {
            ...job,
            card: { ...job.card, id: 'k' },
            texts: [texts[0] ?? '', '{"edited":true}'],
          },
          [],
        ),
      );
      Object.assign(file, {
        jobs: [{ format: 'else' }, JSON.parse(broken), ...file.jobs],
        procedures: [7, { file: 'bad.yaml', text: 'format: 1' }, { file: 'own.yaml', text: own }],
        voices: [{}, profile],
      });
    });
    const to = machine();
    await to.take(bad);
    const all = to.told().join();
    for (const place of ['/jobs/1/entries/1', '/procedures/0', 'bad.yaml', '/voices/0']) expect(all).toContain(place);
    expect(all).toContain('is not a job file');
    const rows = await to.store.jobs();
    expect(rows.ok && rows.value.map(({ card }) => card.id)).toEqual(['j']);
    expect(to.library.own).toHaveLength(1);
    expect((await readShelf(to.store)).profiles).toHaveLength(1);
  });

  test.each([
    ['no number', { most: '200' }],
    ['its ends the wrong way round', { least: 300 }],
    ['a unit of something else', { unit: 'mm' }],
    ['a day that is none', { calibrationDue: '2031-13-45' }],
    ['no name', { say: '' }],
  ])('does not bring a wrench with %s', async (_what, change) => {
    const from = await full();
    const bad = edited(from.box.saved, (file) =>
      Object.assign(file, {
        settings: { people: [3, '', 'Brandt', 'Brandt'], wrenches: [{ ...wrench, ...change }], theme: 'x' },
      }),
    );
    const to = machine();
    await to.take(bad);
    expect(to.box.settings).toEqual({ ...DEFAULT_SETTINGS, people: ['Brandt'] });
    expect(to.told().join()).toContain('/settings/wrenches/0');
  });
});
