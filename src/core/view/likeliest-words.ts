import { MANNERS, type RuleName } from '../job/command';
import { GAP } from '../language/words-now';

/** The few sentences worth teaching now, for "which words now?". */
export const taught = (examples: ReadonlyMap<string, string>): readonly string[] =>
  likeliest([...examples.keys()] as RuleName[])
    .slice(0, 5)
    .flatMap((rule) => examples.get(rule)?.replace(GAP, '').trim() ?? []);

/** Words worth showing first: what moves the work, then what answers a doubt, then the questions. */
export function likeliest(rules: readonly RuleName[]): readonly RuleName[] {
  const rank = (r: RuleName): number =>
    FIRST.indexOf(r) >= 0 ? FIRST.indexOf(r) : 100 + (MANNERS[r] === 'harmless' ? 1 : 0);
  return [...new Set(rules)].filter((r) => !HIDDEN.has(r)).sort((a, b) => rank(a) - rank(b));
}

const FIRST: readonly RuleName[] = [
  'confirm',
  'cancel',
  'turned',
  'not-turned',
  'answer',
  'have-time',
  'no-time',
  'set-at',
  'all-marked',
  'bolt-done',
  'done',
  'so-far',
  'mark-at',
  'measured',
  'im-back',
  'end-closed',
  'tell-next',
  'tell-torque',
  'say-again',
  'take-back',
  'clicked-early',
  'felt-soft',
  'went-past',
  'past-by',
  'snapped',
  'not-sure',
  'hold-on',
  'stop',
];

const HIDDEN: ReadonlySet<RuleName> = new Set(['slower', 'faster', 'terse', 'full', 'clicked', 'bolts-done']);
