import type { Built } from '../build/build-procedure';
import type { Path, Report } from '../issue';
import type { Step } from '../procedure';

/**
 * Nothing is spoken for more than about four seconds without a gap to be heard in: twelve words at 180 a minute.
 * Forty words are about as much as can be kept in mind with a tool in each hand. Both are our own bounds.
 */
const MOST_WORDS_A_SENTENCE = 12;
const MOST_WORDS_A_TEXT = 40;

type Spoken = { readonly text: string; readonly at: Path };

export function checkListening({ steps }: Built, warns: readonly string[], report: Report): void {
  const warning = warningIn(warns);
  for (const { step, at } of steps) {
    for (const spoken of spokenIn(step, at)) checkLength(spoken, report);
    const late = [{ text: afterFirstSentence(step.say), at: [...at, 'say'] }, ...listed('notes', step.notes, at)];
    for (const spoken of late) checkLate(spoken, warning, report);
  }
}

function spokenIn(step: Step, at: Path): readonly Spoken[] {
  const { question } = step;
  const asked = question?.ifWrong === '' ? 'finding' : 'read-back';
  const passes = step.kind === 'tighten' || step.kind === 'slacken' ? step.passes : [];
  return [
    { text: step.say, at: [...at, 'say'] },
    ...listed('warnings', step.warnings, at),
    ...listed('cautions', step.cautions, at),
    ...listed('notes', step.notes, at),
    ...(question ? [{ text: question.ask, at: [...at, asked, 'ask'] }] : []),
    ...(question?.ifWrong ? [{ text: question.ifWrong, at: [...at, asked, 'if-wrong'] }] : []),
    ...passes.flatMap(({ recovery }, index) =>
      Object.entries(recovery).map(([fault, { say }]) => ({
        text: say,
        at: [...at, 'passes', index, 'recovery', fault, 'say'],
      })),
    ),
  ];
}

const listed = (key: string, texts: readonly string[], at: Path): readonly Spoken[] =>
  texts.map((text, index) => ({ text, at: [...at, key, index] }));

function checkLength({ text, at }: Spoken, report: Report): void {
  const words = text.split(/\s+/).length;
  if (words > MOST_WORDS_A_TEXT) report.warning('text-too-long', at, String(words), { most: MOST_WORDS_A_TEXT });
  const longest = Math.max(...sentences(text).map((sentence) => sentence.trim().split(/\s+/).length));
  if (longest > MOST_WORDS_A_SENTENCE)
    report.warning('sentence-too-long', at, String(longest), { most: MOST_WORDS_A_SENTENCE });
}

const sentences = (text: string): readonly string[] => text.split(/(?<=[.!?;:])\s+/);
const afterFirstSentence = (text: string): string => sentences(text).slice(1).join(' ');

/** Words of warning at the start of a sentence, or that announce one. Two forms of the apostrophe are one. */
function warningIn(warns: readonly string[]): RegExp {
  const words = warns.map((words) => escaped(words).replaceAll("'", "['’]")).join('|');
  return new RegExp(`(?:^|[.!?;:]\\s+)(?:${words === '' ? '(?!)' : words})(?!\\p{L})`, 'iu');
}

/** Warnings and cautions are spoken before the action; what stands behind it comes too late. */
function checkLate({ text, at }: Spoken, warning: RegExp, report: Report): void {
  const found = warning.exec(text)?.[0].replace(/^[.!?;:\s]+/, '');
  if (found !== undefined) report.warning('warning-after-action', at, found, {});
}

const escaped = (text: string): string => text.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&');
