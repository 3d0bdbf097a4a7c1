import type { LiveGrammar, Manner } from '../../core/language/grammar';
import { interpret } from '../../core/language/interpret';
import type { RecogniserEvent, RejectReason, Span } from '../../core/ports';
import { BARS, ONE_WORD, VETO } from './bars';
import { OTHER, type Said, type SaidWord } from './frame-messages';

/** One utterance, and the revision it was listened for under. */
type Utterance = { readonly said: Said; readonly revision: string } & Span;

/**
 * What a result of the library is worth. Its phrases become a bigram model that mixes them freely, so the words are
 * read once more by the grammar itself; whatever is not exactly one command of it is rejected, never guessed.
 */
export function judge(live: LiveGrammar, { said, revision, startFrame, endFrame }: Utterance): RecogniserEvent {
  const span = { startFrame, endFrame };
  const words = said.words.map(({ word }) => word).join(' ');
  const score = Math.min(...said.words.map(({ conf }) => Math.max(0, Math.min(1, conf))));
  const rejected = (why: RejectReason): RecogniserEvent => ({
    type: 'rejected',
    revision,
    words: withoutOther(said.words),
    score: Math.min(score, 0.5),
    why,
    ...span,
  });
  if (said.words.some(({ word }) => word === OTHER)) return rejected('filler');
  const meaning = interpret(live, words);
  const graded = (manner: Manner): number => grade(score, manner, said.words.length);
  if (meaning.kind === 'command' && meaning.manner === 'stop') {
    // It means the same in every state, so it holds however old the grammar it was asked under.
    const sure = graded('stop');
    return sure < 0.5 ? rejected('score') : { type: 'heard', revision: live.revision, words, score: sure, ...span };
  }
  if (revision !== live.revision || said.torn) return rejected('stale');
  if (meaning.kind === 'ambiguous') return rejected('ambiguous');
  if (meaning.kind === 'nothing') return rejected('not-a-command');
  const veto = vetoOf(said);
  if (veto) return rejected(veto);
  // The app can say why not ("there is no bolt forty"), but must be as sure as of a real command.
  const sure = graded(meaning.kind === 'command' ? meaning.manner : 'progress');
  return sure < 0.5 ? rejected('score') : { type: 'heard', revision, words, score: sure, ...span };
}

/** One half at the bar, 1 at certainty. */
function grade(score: number, manner: Manner, wordCount: number): number {
  const base = BARS[manner];
  const bar = wordCount === 1 && manner !== 'stop' ? base + (1 - base) * ONE_WORD : base;
  return score < bar ? (0.5 * score) / bar : 0.5 + (0.5 * (score - bar)) / (1 - bar);
}

function vetoOf({ words, snrDb }: Said): RejectReason | null {
  const lengths = words.map(({ start, end }) => end - start);
  if (Math.min(...lengths) < VETO.shortest) return 'too-short';
  if (Math.max(...lengths) > VETO.longest) return 'too-long';
  return snrDb < VETO.leastSnrDb ? 'too-quiet' : null;
}

const withoutOther = (words: readonly SaidWord[]): string =>
  words
    .map(({ word }) => word)
    .filter((word) => word !== OTHER)
    .join(' ');
