import { readdirSync, readFileSync } from 'node:fs';
import type { ChosenWrench } from '../../src/core/job/chosen-wrench';

/** What happens in a session, in order. Times in milliseconds. */
export type Event =
  | string
  /** Talk in the bay that is meant for nobody, heard as the ear would hand it on. */
  | { readonly radio: string }
  /** Said before the last turn was over: it belongs to what was asked then. */
  | { readonly late: string }
  | { readonly wait: number }
  /** The page closed or the machine lost power, and opened again after so long. */
  | { readonly reopen: number }
  /** The wrenches of Setup. */
  | { readonly owned: readonly ChosenWrench[] }
  | { readonly wrench: ChosenWrench; readonly tool: string };

/** What came of one event: recorded, and rewritten by `cases:update`. */
export type Outcome = {
  readonly said: string;
  /** The rule of the command, or why the words were not one. */
  readonly heard: string;
  readonly verdict: string;
  readonly replies: string;
  readonly node: string;
};

/**
 * What must hold at a turn, written by hand from the trade and never recorded: torques, degrees, refusals. `turn` counts
 * the events of `say` from one; without it the rule is about the end.
 */
export type Must = {
  readonly turn?: number;
  readonly heard?: string;
  readonly verdict?: string;
  /** Codes among the replies. */
  readonly replies?: readonly string[];
  /** Words in what is spoken, and in what is shown. */
  readonly says?: readonly string[];
  readonly shows?: readonly string[];
  readonly node?: string;
  readonly bolts?: Readonly<Record<string, string>>;
  readonly ends?: readonly string[];
};

export type Final = {
  readonly status: string;
  readonly node: string;
  /** Fasteners of the passes in which anything has changed, those that are not open. */
  readonly bolts: Readonly<Record<string, string>>;
  /** Loose ends that have come and gone. */
  readonly ends: readonly string[];
};

export type Case = {
  readonly why: string;
  /** Where the right answers come from, where they are not our own rules. */
  readonly source?: string;
  /** A shipped document, or one of tests/cases/procedures. */
  readonly procedure: string;
  readonly people?: readonly string[];
  /** The node to begin at, reached by somebody who makes no mistake. */
  readonly start?: string;
  /** Events before the ones that count; all must be taken. */
  readonly given?: readonly Event[];
  readonly say: readonly Event[];
  readonly must: readonly Must[];
  readonly expect?: readonly Outcome[];
  readonly final?: Final;
};

export const SESSIONS = 'tests/cases/sessions';

export const caseNames = (): readonly string[] =>
  readdirSync(SESSIONS)
    .filter((file) => file.endsWith('.json'))
    .map((file) => file.slice(0, -'.json'.length));

export const readCase = (name: string): Case => JSON.parse(readFileSync(`${SESSIONS}/${name}.json`, 'utf8')) as Case;
