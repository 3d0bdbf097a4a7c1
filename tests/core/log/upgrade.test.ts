import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { checkDocument } from '../../../src/cli/check-document';
import type { EntryBody } from '../../../src/core/job/entry';
import { fieldsOfLog, isEntryBody } from '../../../src/core/job/entry-guard';
import { fold } from '../../../src/core/job/evolve';
import { passStatesOf } from '../../../src/core/job/place';
import { passesOf, planOf, stepIn } from '../../../src/core/job/plan';
import { settingOf } from '../../../src/core/job/setting';
import { passState } from '../../../src/core/job/tightening';
import type { Head } from '../../../src/core/log/chain';
import { type StoredEntry, seal } from '../../../src/core/log/envelope';
import { byKind, currentFormat, type LogFormat, readLog, UPGRADES } from '../../../src/core/log/upgrade';
import { LOG_VERSION } from '../../../src/core/log/version';
import { nodeHash, type SampleBody, sealedLog, textsOf } from './sample-log';

const isSample = byKind<SampleBody>(['job-started', 'bolt-done', 'heard']);
const texts = textsOf(sealedLog());

describe('reading a log', () => {
  test('gives entries that the fold can take', () => {
    const log = readLog(texts, nodeHash, currentFormat(isSample));
    expect(log.ok && log.value[2]).toMatchObject({ seq: 3, kind: 'bolt-done', bolt: 1, who: 'Mechanic' });
  });

  test('stops at an entry that this program does not know, and keeps those before', () => {
    const log = readLog(texts, nodeHash, currentFormat(byKind<SampleBody>(['job-started', 'heard'])));
    expect(!log.ok && log.error).toMatchObject({
      index: 2,
      problem: { code: 'unknown-entry', seq: 3, kind: 'bolt-done' },
      good: [{ seq: 1 }, { seq: 2 }],
    });
  });

  test('stops at a broken entry, and keeps those before', () => {
    const log = readLog(texts.with(3, '{}'), nodeHash, currentFormat(isSample));
    expect(!log.ok && log.error).toMatchObject({ index: 3, problem: { code: 'not-an-entry' } });
    expect(!log.ok && log.error.good).toHaveLength(3);
  });

  test('refuses an entry of a newer program under its own code', () => {
    const newer = textsOf(sealedLog()).map((text) => text.replace(`"v":${LOG_VERSION}`, `"v":${LOG_VERSION + 1}`));
    const log = readLog(newer, nodeHash, currentFormat(isSample));
    expect(!log.ok && log.error).toEqual({
      index: 0,
      problem: { code: 'newer-log', given: LOG_VERSION + 1, known: LOG_VERSION },
      good: [],
    });
  });
});

describe('old entries', () => {
  // An invented future: version 2 counts degrees in `turned`, version 3 adds the wrench.
  const format: LogFormat<SampleBody> = {
    version: 3,
    upgrades: [
      (entry) => ({ ...entry, v: 2, turned: entry.degrees }),
      (entry) => ({ ...entry, v: 3, wrench: 'unknown' }),
    ],
    isBody: byKind<SampleBody>(['bolt-done']),
  };
  const written = (v: 1, extra: object) => {
    const stamp = { v, seq: 1, prev: '0'.repeat(64), at: 1, mono: 1, session: 's', who: 'm' };
    return seal({ kind: 'bolt-done', ...extra }, stamp, nodeHash).sealed;
  };

  test('are lifted one version at a time, and keep the hash of their stored bytes', () => {
    const old = written(1, { degrees: 90 });
    const log = readLog([old.text], nodeHash, format);
    expect(log.ok && log.value[0]).toMatchObject({ v: 3, turned: 90, wrench: 'unknown', hash: old.hash });
  });

  test('there is one step for each version there has been', () => {
    expect(UPGRADES).toHaveLength(LOG_VERSION - 1);
  });

  test('an entry of the version now is not lifted', () => {
    const lift = (): StoredEntry => {
      throw new Error('lifted');
    };
    expect(readLog([written(1, {}).text], nodeHash, { ...format, version: 1, upgrades: [lift] }).ok).toBe(true);
  });
});

describe('a job of version 1, as that program wrote it', () => {
  // Left by the program before adapters had an angle: half inch wrench 400 mm long, adapter 50 mm, first pass 30 N·m.
  const kept: { readonly head: Head; readonly texts: readonly string[] } = JSON.parse(
    readFileSync(new URL('./kept-job-v1.json', import.meta.url), 'utf8'),
  );
  const log = readLog<EntryBody>(kept.texts, nodeHash, currentFormat<EntryBody>(isEntryBody), kept.head);
  const entries = log.ok ? log.value : [];

  test('is whole, and every entry is one of now', () => {
    expect(kept.texts.every((text) => text.includes('"v":1'))).toBe(true);
    expect(log).toMatchObject({ ok: true });
    expect(entries.every(({ v }) => v === LOG_VERSION)).toBe(true);
    expect(entries.find(({ kind }) => kind === 'job-started')).toMatchObject({ people: [] });
    expect(entries.find(({ kind }) => kind === 'adapter-on')).toMatchObject({ millimetres: 50, degrees: 0 });
    expect(entries.find(({ kind }) => kind === 'asked')).toMatchObject({ question: { kind: 'adapter', degrees: 0 } });
  });

  test('goes on where it stood: 30 x 400 / 450 is 26.7, so 27 is set, and two bolts are done', () => {
    const [first] = entries;
    if (first?.kind !== 'job-started') return expect.unreachable();
    const checked = checkDocument(first.text, 'kept');
    if (!checked.ok) return expect.unreachable();
    const job = fold(planOf(checked.value), entries);
    const [pass] = passesOf(stepIn(job.plan, 'tighten-left').step);
    if (pass?.kind !== 'torque') return expect.unreachable();
    expect(settingOf(job, pass)).toMatchObject({ kind: 'set', set: { value: 27 } });
    expect(passState(passStatesOf(job, 'tighten-left'), pass.id).bolts.size).toBe(2);
  });

  test('what was told in version 1 is never changed by lifting it', () => {
    const angled = { kind: 'adapter-on', millimetres: 50, degrees: 90, v: 1 } as unknown as StoredEntry;
    expect(UPGRADES[0]?.(angled)).toMatchObject({ degrees: 90, v: 2 });
    const named = { kind: 'job-started', people: ['Robin'], v: 1 } as unknown as StoredEntry;
    expect(UPGRADES[0]?.(named)).toMatchObject({ people: ['Robin'] });
  });
});

// A reader takes no notice of fields it does not know. Where this fails, a field or a kind was added or taken away: raise
// LOG_VERSION, write its step, keep a job of the version before, and only then write the new list down.
test('the fields of every kind are those of this version', () => {
  const file = new URL(`./fields-v${LOG_VERSION}.json`, import.meta.url);
  if (process.env.FIELDS_UPDATE === '1') writeFileSync(file, `${JSON.stringify(fieldsOfLog(), null, 2)}\n`);
  expect(fieldsOfLog()).toEqual(JSON.parse(readFileSync(file, 'utf8')));
});
