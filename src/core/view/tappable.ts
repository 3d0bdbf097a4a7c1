import { dimensionOf, isUnitName, symbolOf } from '../fastening/unit';
import type { RuleName } from '../job/command';
import type { Job } from '../job/job';
import { offersOf } from '../job/offers';
import { teachingOffers } from '../job/teaching';
import { type Blank, type SentenceForm, sentenceForm } from '../language/sentence-form';
import type { Tongue } from '../tongue';
import { likeliest } from './likeliest-words';

/** A sentence that works now, to be tapped: complete as it stands, or with blanks to fill in order. */
export type Tappable = {
  readonly rule: RuleName;
  readonly parts: readonly (string | TapBlank)[];
};

export type TapBlank =
  | { readonly kind: 'choice'; readonly choices: readonly string[] }
  | {
      readonly kind: 'number';
      /** Digits behind the point, at most. */
      readonly decimals: number;
      /** What stands between whole and part. */
      readonly point: string;
      /** The symbol at the number where no unit is said with it, as at degrees. */
      readonly symbol: string;
      /** The first is what is meant without a word, unless the unit must be named. */
      readonly isUnitNeeded: boolean;
      readonly units: readonly { readonly symbol: string; readonly words: string }[];
    };

/** All that can be said in this job now and is worth saying, the likeliest first, in the words it is said with. */
export function tappableNow(job: Job, tongue: Pick<Tongue, 'liveGrammar' | 'replies'>): readonly Tappable[] {
  const point = tongue.replies.words.numbers.pointSign;
  const live = tongue.liveGrammar(offersOf(job), 'tappable');
  return likeliest(teachingOffers(job).map(({ rule }) => rule as RuleName)).flatMap((rule) => {
    const command = live.commands.find((one) => one.rule === rule);
    return command ? [{ rule, parts: sentenceForm(live, command).map((part) => shown(part, point)) }] : [];
  });
}

const shown = (part: SentenceForm[number], point: string): Tappable['parts'][number] =>
  typeof part === 'string' ? part : blankShown(part, point);

function blankShown(blank: Blank, point: string): TapBlank {
  if (blank.kind === 'choice') {
    const words = blank.choices.map((choice) => choice.words);
    // A document names the right answer first, and its place must not give it away.
    return { kind: 'choice', choices: blank.slot === 'answer' ? words.toSorted() : words };
  }
  const [own] = blank.units;
  // Units of another kind are only heard to be asked about: "pounds" at a torque.
  const units = blank.units.filter(({ id }) => isAlike(id, own?.id));
  return {
    kind: 'number',
    decimals: blank.decimals,
    point,
    symbol: blank.slot === 'degrees' ? symbolOf('deg') : '',
    isUnitNeeded: blank.isUnitNeeded,
    units: units.map(({ id, words }) => ({ symbol: isUnitName(id) ? symbolOf(id) : id, words })),
  };
}

const isAlike = (id: string, own: string | undefined): boolean =>
  own !== undefined && isUnitName(id) && isUnitName(own) && dimensionOf(id) === dimensionOf(own);
