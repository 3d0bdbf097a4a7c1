import { fail, ok, type Result } from '../../core/result';
import { type Draft, type DraftIssue, type LayoutDraft, numbersOf, type OrderDraft, type SubsetDraft } from './draft';
import { wordsOf } from './pieces';

/** "1 5 3 7", "centre-out" or "cross". A head takes a generated order only where that has been agreed to. */
export function readOrder(
  text: string,
  layout: LayoutDraft,
  joint: Draft['joint'],
  agreed: boolean,
): Result<OrderDraft, readonly DraftIssue[]> {
  const rule = text.trim();
  if (rule === 'centre-out' || rule === 'cross') {
    if (joint !== 'head' || agreed) return ok({ kind: 'generated', rule });
    const message = 'The order of a head comes from its maker, not from a rule.';
    const mend = 'List the numbers, or add --generated where no maker’s order exists.';
    return fail([{ code: 'generated-order-on-head', column: 1, given: rule, message, mend }]);
  }
  const known = numbersOf(layout);
  const issues: DraftIssue[] = [];
  const numbers = wordsOf(text).map(({ text: word, column }) => {
    if (!known.includes(Number(word)))
      issues.push({ code: 'bad-order', column, given: word, message: `There is no fastener ${word}.`, mend: LIST });
    return Number(word);
  });
  if (issues.length > 0) return fail(issues);
  const missing = known.filter((n) => !numbers.includes(n));
  const twice = numbers.filter((n, index) => numbers.indexOf(n) !== index);
  if (missing.length + twice.length === 0) return ok({ kind: 'listed', numbers });
  const given = [
    missing.length > 0 ? `missing ${missing.join(', ')}` : '',
    twice.length > 0 ? `twice ${twice.join(', ')}` : '',
  ];
  const message = 'The order does not name each fastener exactly once.';
  return fail([{ code: 'bad-order', column: 1, given: given.filter(Boolean).join('; '), message, mend: LIST }]);
}

const LIST = 'List each fastener once, or write centre-out or cross.';

/** "large=1-10" or "small=11,12,13,14": names for some of the fasteners. One fastener has one name at most. */
export function readSubsets(
  texts: readonly string[],
  layout: LayoutDraft,
): Result<readonly SubsetDraft[], readonly DraftIssue[]> {
  const subsets: SubsetDraft[] = [];
  for (const text of texts) {
    const subset = readSubset(text, layout);
    if (!subset.ok) return subset;
    const other = subsets.find(
      ({ name, numbers }) => name === subset.value.name || numbers.some((n) => subset.value.numbers.includes(n)),
    );
    if (other) return refuse(1, text, `This shares its name or a fastener with "${other.name}".`);
    subsets.push(subset.value);
  }
  return ok(subsets);
}

const refuse = (column: number, given: string, message: string): Result<never, readonly DraftIssue[]> =>
  fail([{ code: 'bad-subset', column, given, message, mend: 'Write it like large=1-10 or small=11,12.' }]);

function readSubset(text: string, layout: LayoutDraft): Result<SubsetDraft, readonly DraftIssue[]> {
  const match = /^\s*([a-z][a-z0-9-]*)\s*=\s*(.+)$/.exec(text);
  if (!match) return refuse(1, text, 'This is not a name with its numbers.');
  const [, name = '', list = ''] = match;
  const numbers = list.split(/[\s,]+/).flatMap(range);
  const strange = numbers.find((n) => !numbersOf(layout).includes(n));
  if (strange !== undefined || numbers.length === 0)
    return refuse(text.indexOf('=') + 2, list, 'There is no such fastener.');
  return ok({ name, numbers: [...new Set(numbers)] });
}

/** Bounded, so that a slip of the finger does not fill the memory. */
function range(text: string): readonly number[] {
  const match = /^(\d{1,3})(?:-(\d{1,3}))?$/.exec(text);
  if (!match) return text === '' ? [] : [Number.NaN];
  const from = Number(match[1]);
  const to = Number(match[2] ?? from);
  return to < from ? [Number.NaN] : Array.from({ length: to - from + 1 }, (_, index) => from + index);
}
