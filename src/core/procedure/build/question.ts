import type { StepText } from '../document/steps';
import type { Path, Report } from '../issue';
import type { Question } from '../procedure';

const LEAST_WRONG = 2;

/** Words that can be spoken and recognised as they stand: small letters, with apostrophes and spaces between. */
const SPEAKABLE = /^\p{Ll}+(?:'\p{Ll}+)*(?: \p{Ll}+(?:'\p{Ll}+)*)*$/u;

type Answer = Question['answers'][number];

/**
 * A read-back or a finding as one question. The answers of a read-back are put in the order of their ids, so that
 * nothing that lists them gives the right one away by its place.
 */
export function buildQuestion(text: StepText, at: Path, report: Report): Question | null {
  const { 'read-back': readBack, finding } = text;
  if (readBack !== undefined && finding !== undefined) report.error('question-twice', [...at, 'finding'], text.id, {});
  if (readBack !== undefined) {
    const here = [...at, 'read-back'];
    const wrong = answersOf(readBack.wrong, false);
    if (wrong.length < LEAST_WRONG)
      report.error('too-few-wrong-answers', [...here, 'wrong'], String(wrong.length), { least: LEAST_WRONG });
    const right = answersOf(readBack.right, true);
    if (right.length === 0) report.error('too-few.right', [...here, 'right'], '0', {});
    for (const { id } of wrong)
      if (right.some((answer) => answer.id === id))
        report.error('duplicate-id.answer', [...here, 'wrong', id], id, { id });
    const answers = [...right, ...wrong].toSorted((a, b) => (a.id < b.id ? -1 : 1));
    checkWords(answers, here, report);
    return { ask: readBack.ask, answers, ifWrong: readBack['if-wrong'] };
  }
  if (finding === undefined) return null;
  const answers = answersOf(finding.answers, true);
  if (answers.length < 2) report.error('too-few.answers', [...at, 'finding', 'answers'], String(answers.length), {});
  checkWords(answers, [...at, 'finding'], report);
  return { ask: finding.ask, answers, ifWrong: '' };
}

const answersOf = (answers: Readonly<Record<string, readonly string[]>>, right: boolean): readonly Answer[] =>
  Object.entries(answers).map(([id, say]) => ({ id, say, right }));

function checkWords(answers: readonly Answer[], at: Path, report: Report): void {
  const owners = new Map<string, string>();
  for (const { id, say, right } of answers) {
    const here = [...at, at.at(-1) === 'finding' ? 'answers' : right ? 'right' : 'wrong', id];
    for (const [index, words] of say.entries()) {
      const place = [...here, index];
      if (!SPEAKABLE.test(words)) report.error('answer-unspeakable', place, words, {});
      const other = owners.get(words);
      if (other !== undefined) report.error('duplicate-answer', place, words, { words, other });
      owners.set(words, id);
    }
  }
}
