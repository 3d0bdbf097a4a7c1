import { cardSections } from '../core/card/card-sections';
import { cardWordsOf } from '../core/card/card-words';
import { jobCard } from '../core/card/job-card';
import type { Procedure } from '../core/procedure/procedure';
import type { Screen } from '../ui/app';
import type { ScreenWords } from '../ui/words/words';

/** The job card of a procedure, laid out in the words of the screens. */
export function cardScreen(procedure: Procedure, words: ScreenWords): Screen {
  const card = jobCard(procedure);
  return { name: 'card', ...card, sections: cardSections(card, cardWordsOf(words)) };
}
