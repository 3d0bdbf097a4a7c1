import { UNIT_NAMES } from '../fastening/unit';
import { type UnitNames, unitNames } from '../fastening/unit-spelling';
import { mend } from '../mend';
import { Field } from '../phrasing/field';
import type { ReplyIssue } from '../phrasing/reply-issue';
import { fail, ok, type Result } from '../result';

/** What the checker must know of the language a document is written in: its grammars/<language>/wording.yaml. */
export type Wording = {
  /** What a warning begins with, or is announced by. */
  readonly warns: readonly string[];
  /** The places on a clock face from twelve on, half an hour apart. */
  readonly clock: readonly string[];
  /** The names of units written out. */
  readonly units: UnitNames;
};

/** By the codes of the languages. */
export type Wordings = ReadonlyMap<string, Wording>;

const HALF_HOURS = 24;

/** Of a language nobody has written down nothing is known: no warning is found, places are figures, and units are symbols. */
export const NO_WORDING: Wording = {
  warns: [],
  clock: Array.from({ length: HALF_HOURS }, (_, i) => `${Math.floor(i / 2) || 12}:${i % 2 === 0 ? '00' : '30'}`),
  units: new Map(),
};

/** Reads the plain data of a wording file. */
export function readWording(raw: unknown): Result<Wording, readonly ReplyIssue[]> {
  const issues: ReplyIssue[] = [];
  const file = Field.root(raw, issues).only(['warns', 'clock', 'units']);
  const units = file.key('units').only(UNIT_NAMES);
  const wording = {
    warns: file.key('warns').texts(),
    clock: file.key('clock').texts(),
    units: unitNames(Object.fromEntries(units.keys().map((unit) => [unit, units.key(unit).texts()]))),
  };
  if (wording.clock.length !== HALF_HOURS) file.key('clock').blame('wrong-count', mend('so-many', String(HALF_HOURS)));
  return issues.length > 0 ? fail(issues) : ok(wording);
}
