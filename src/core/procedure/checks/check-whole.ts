import type { Built } from '../build/build-procedure';
import type { Report } from '../issue';
import type { Wording } from '../wording';
import { answersIn, checkBranches } from './branches';
import { checkHolds } from './holds';
import { checkListening } from './listening';
import { checkLooseEnds } from './loose-ends';
import { checkPasses } from './passes';
import { checkReferences } from './references';
import { checkRules } from './rules';
import { checkTimers } from './timers';

/** Everything that can only be seen by looking at more than one entry. */
export function checkWhole(built: Built, { warns }: Wording, report: Report): void {
  const answersOf = answersIn(built);
  checkReferences(built, report);
  checkRules(built, report);
  checkBranches(built, answersOf, report);
  checkLooseEnds(built, answersOf, report);
  checkTimers(built, answersOf, report);
  checkPasses(built, report);
  checkListening(built, warns, report);
  checkHolds(built, report);
}
