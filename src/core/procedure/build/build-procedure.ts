import { ESTIMATES } from '../../sums/estimates';
import type { DocumentText } from '../document/document';
import type { Repeat } from '../document/words';
import type { Path, Report } from '../issue';
import type { Procedure, Step } from '../procedure';
import { checkId, expandEntries } from '../repeat';
import type { Wording } from '../wording';
import { buildLimit, buildLooseEnd, buildPart, buildTimer, buildTool } from './entries';
import type { OrderedPattern } from './order';
import { buildPattern } from './pattern';
import { checkStepIds, expandPhase, isTooLong, type PlacedStepText } from './phase';
import { buildRule } from './rule';
import { buildStep } from './step';

export type EntryGroup = 'tools' | 'parts' | 'patterns' | 'loose-ends' | 'timers' | 'limits' | 'rules';

/** A step with the place it was written at; steps of one `for:` share theirs. */
type PlacedStep = { readonly step: Step; readonly at: Path };

/** A procedure as far as it could be built, and where its parts stand, for the checks that look at the whole. */
export type Built = {
  readonly procedure: Procedure;
  readonly steps: readonly PlacedStep[];
  /** Every step as written after `for:`, whether or not it could be built. */
  readonly texts: readonly PlacedStepText[];
  /** Every id that was written down under each heading, with its place, whether or not it could be built. */
  readonly written: Readonly<Record<EntryGroup, ReadonlyMap<string, Path>>>;
};

type Entries<U> = { readonly built: ReadonlyMap<string, U>; readonly written: ReadonlyMap<string, Path> };

export function buildProcedure(text: DocumentText, { clock }: Wording, report: Report): Built {
  const entries = <T extends { readonly for?: Repeat | undefined }, U>(
    group: EntryGroup,
    texts: Readonly<Record<string, T>> | undefined,
    build: (id: string, entry: T, at: Path, report: Report) => U | null,
  ): Entries<U> => {
    const expanded = [...expandEntries(texts, [group], report)];
    const built = expanded.flatMap(([id, { at, value }]) => {
      const entry = build(id, value, at, report);
      return entry === null ? [] : [[id, entry] as const];
    });
    return { built: new Map(built), written: new Map(expanded.map(([id, { at }]) => [id, at])) };
  };

  checkId(text.id, ['id'], report);
  const tools = entries('tools', text.tools, buildTool);
  const parts = entries('parts', text.parts, buildPart);
  const looseEnds = entries('loose-ends', text['loose-ends'], buildLooseEnd);
  const timers = entries('timers', text.timers, buildTimer);
  const limits = entries('limits', text.limits, buildLimit);
  const rules = entries('rules', text.rules, buildRule);
  const ordered = entries('patterns', text.patterns, (id, entry, at): OrderedPattern | null => {
    const pattern = buildPattern(id, entry, clock, at, report);
    return pattern && { pattern, text: entry, at };
  });
  const patterns = new Map([...ordered.written.keys()].map((id) => [id, ordered.built.get(id) ?? null]));

  const kept = isTooLong(text.phases, report) ? [] : text.phases;
  const phases = kept.map((phase, index) => ({
    ...phase,
    at: ['phases', index],
    texts: expandPhase(phase, ['phases', index], report),
  }));
  const texts = phases.flatMap((phase) => phase.texts);
  checkStepIds(phases, texts, report);
  const placed = phases.map(({ id, say, texts }) => ({
    id,
    say,
    steps: texts.flatMap(({ value, at }): readonly PlacedStep[] => {
      const step = buildStep(value, at, patterns, report);
      return step === null ? [] : [{ step, at }];
    }),
  }));

  const { format, language, id, title, edition, demonstration, source, machine } = text;
  return {
    procedure: {
      ...{ format, language, id, title, edition, demonstration, source, machine },
      tools: tools.built,
      parts: parts.built,
      patterns: new Map([...ordered.built].map(([key, { pattern }]) => [key, pattern])),
      looseEnds: looseEnds.built,
      timers: timers.built,
      limits: limits.built,
      rules: rules.built,
      estimates: ESTIMATES,
      phases: placed.map((phase) => ({ ...phase, steps: phase.steps.map(({ step }) => step) })),
    },
    steps: placed.flatMap(({ steps }) => steps),
    texts,
    written: {
      tools: tools.written,
      parts: parts.written,
      patterns: ordered.written,
      'loose-ends': looseEnds.written,
      timers: timers.written,
      limits: limits.written,
      rules: rules.written,
    },
  };
}
