import { describe, expect, test } from 'vitest';
import { everyLanguage } from './language';

describe.each(await everyLanguage())('the stray words of $code', ({ tongue, lexicons, hear }) => {
  const { stray } = tongue.profile;

  test('are no command, in no state', () => {
    expect(stray.length).toBeGreaterThan(10);
    expect(stray.filter((word) => hear(word).kind !== 'nothing')).toEqual([]);
  });

  test('can be recognised', () => {
    expect(stray.filter((word) => !lexicons.some((lexicon) => lexicon.has(word)))).toEqual([]);
  });
});
