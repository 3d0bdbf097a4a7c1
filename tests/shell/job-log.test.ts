import { describe, expect, test } from 'vitest';
import type { EntryBody } from '../../src/core/job/entry';
import { damageWords, openFaultWords } from '../../src/shell/job/fault-words';
import { jobLogOf } from '../../src/shell/job/job-log';
import { sha256Hex } from '../../src/store/hash';
import { say } from './fakes';
import { BEGUN, plateJob, STARTED } from './plate-job';

describe('a job read from its log', () => {
  test('comes whole, with the document it was begun with', async () => {
    const log = await jobLogOf(plateJob(BEGUN), sha256Hex, 'en');
    expect(log).toMatchObject({ ok: true, value: { damage: null, procedure: { id: 'practice-plate' } } });
  });

  test('an edited entry ends what can be read, and is named with what is wrong', async () => {
    const job = plateJob([...BEGUN, { kind: 'step-done', step: 'clamp' }]);
    const texts = job.texts.map((t, i) => (i === 1 ? t.replace('"at":1', '"at":2') : t));
    const log = await jobLogOf({ ...job, texts }, sha256Hex, 'en');
    expect(log).toMatchObject({ ok: true, value: { damage: { entry: 2, why: 'bad-hash' } } });
    if (!log.ok || !log.value.damage) return expect.unreachable();
    expect(log.value.entries.map((e) => e.kind)).toEqual(['job-started']);
    expect(damageWords(log.value.damage, say)).toContain('entry 2: its contents do not match its seal.');
  });

  test('a log that is cut short is named at its end', async () => {
    const job = plateJob([...BEGUN, { kind: 'step-done', step: 'clamp' }]);
    const log = await jobLogOf({ ...job, texts: job.texts.slice(0, 2) }, sha256Hex, 'en');
    expect(log).toMatchObject({ ok: true, value: { damage: { entry: 3, why: 'cut-short' } } });
  });

  test('a well sealed entry about a step that is not there is read no further', async () => {
    const log = await jobLogOf(plateJob([STARTED, { kind: 'step-done', step: 'nowhere' }]), sha256Hex, 'en');
    expect(log).toMatchObject({ ok: true, value: { damage: { entry: 2, why: 'stray-entry' } } });
  });

  test.each<{ readonly what: string; readonly first: EntryBody; readonly code: string }>([
    { what: 'no beginning', first: { kind: 'session-opened' }, code: 'log-damaged' },
    { what: 'a broken document', first: { ...STARTED, text: 'title: x' }, code: 'procedure-broken' },
  ])('with $what it cannot be opened at all', async ({ first, code }) => {
    expect(await jobLogOf(plateJob([first]), sha256Hex, 'en')).toMatchObject({ ok: false, error: { code } });
  });

  test.each(['en', 'fr'])(
    'what is wrong with its document is told in the language of the page: %s',
    async (language) => {
      const log = await jobLogOf(plateJob([{ ...STARTED, text: 'title: x' }]), sha256Hex, language);
      if (log.ok || log.error.code !== 'procedure-broken') throw new Error('opened');
      const [issue] = log.error.issues;
      expect(issue?.message).toMatch(language === 'fr' ? /^Il manque «/ : / is missing\.$/);
      expect(openFaultWords(log.error, say)).toContain(issue?.message ?? 'none');
    },
  );
});
