import type { RuleName } from '../job/command';
import type { BenchButton } from './bench-view';

/**
 * Four places the hand learns: on, back, hold, tell. What the first two do follows the state; a place with nothing
 * to do stays empty so that the others never move. No button skips or confirms what its label does not say.
 */
export function buttonsOf(
  rules: readonly RuleName[],
  label: (rule: RuleName) => string,
): readonly (BenchButton | null)[] {
  const pick = (wanted: readonly RuleName[]): BenchButton | null => {
    const rule = wanted.find((r) => rules.includes(r));
    return rule ? { command: rule, label: label(rule), slots: NEEDS_CURSOR.has(rule) ? 'cursor' : 'none' } : null;
  };
  return [
    pick(['confirm', 'not-turned', 'im-back', 'have-time', 'set-at', 'all-marked', 'bolt-done', 'done', 'close-job']),
    pick(['cancel', 'turned', ...(rules.includes('have-time') ? ['no-time' as const] : []), 'take-back']),
    pick(['hold-on', 'tell-place']),
    pick(['tell-next', 'say-again']),
  ];
}

const NEEDS_CURSOR: ReadonlySet<RuleName> = new Set(['bolt-done', 'set-at']);
