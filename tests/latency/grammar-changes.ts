import { onward } from '../../src/cli/authoring/onward';
import { beginTrial } from '../../src/cli/authoring/trial';
import { earForNode } from '../../src/cli/ear-host';
import { readTongue } from '../../src/cli/tongue-files';
import { offersOf } from '../../src/core/job/offers';
import { planOf } from '../../src/core/job/plan';
import { revisionOf } from '../../src/core/job/revision';
import type { LiveGrammar } from '../../src/core/language/grammar';
import { earLanguage } from '../../src/speech/ear/ear-language';
import { shipped } from '../core/job/workbench';

const CHANGES = 5000;
/** What is loaded or compiled once is not growth: this many changes come before the first look. */
const SETTLING = 200;

export type Growth = {
  readonly changes: number;
  readonly grammars: number;
  /** Of the whole process, and of what the collector and the engine's own memory hold; in megabytes. */
  readonly rssMb: number;
  readonly heapMb: number;
  readonly externalMb: number;
};

/** What every place of a job lets be said, armed in turn, as the desk does after each command. */
export async function grammarChanges(): Promise<Growth> {
  if (!globalThis.gc) throw new Error('memory is only comparable with --expose-gc');
  const tongue = readTongue('en');
  const ear = await earForNode(earLanguage(tongue));
  await ear.listen(16_000);
  const grammars = grammarsOf(tongue.liveGrammar);
  const arm = (from: number, until: number): void => {
    for (let n = from; n < until; n += 1) {
      const grammar = grammars[n % grammars.length];
      if (grammar) ear.arm(grammar);
    }
  };
  arm(0, SETTLING);
  const before = held();
  arm(SETTLING, SETTLING + CHANGES);
  const after = held();
  const mb = (bytes: number): number => Math.round(bytes / 1e5) / 10;
  return {
    changes: CHANGES,
    grammars: grammars.length,
    rssMb: mb(after.rss - before.rss),
    heapMb: mb(after.heapUsed - before.heapUsed),
    externalMb: mb(after.external - before.external),
  };
}

function held(): NodeJS.MemoryUsage {
  for (let n = 0; n < 3; n += 1) globalThis.gc?.();
  return process.memoryUsage();
}

function grammarsOf(liveGrammar: ReturnType<typeof readTongue>['liveGrammar']): readonly LiveGrammar[] {
  const grammars: LiveGrammar[] = [];
  for (
    let trial: ReturnType<typeof onward> = beginTrial(planOf(shipped('tarnbeck-head-slice')));
    trial;
    trial = onward(trial, new Map())
  )
    grammars.push(liveGrammar(offersOf(trial.job), `${revisionOf(trial.job)}/${grammars.length}`));
  return grammars;
}
