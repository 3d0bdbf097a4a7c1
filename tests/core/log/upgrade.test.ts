import { describe, expect, test } from 'vitest';
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
    const newer = textsOf(sealedLog()).map((text) => text.replace('"v":1', '"v":2'));
    const log = readLog(newer, nodeHash, currentFormat(isSample));
    expect(!log.ok && log.error).toEqual({
      index: 0,
      problem: { code: 'newer-log', given: 2, known: LOG_VERSION },
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
