import type { Printed } from '../fastening/quantity';
import type { Limit, PartSpec, Procedure, Step, TimerSpec, ToolSpec } from '../procedure/procedure';
import type { Rule } from '../sums/rule';
import { type PassSetting, settingsOf } from './pass-setting';

/** What is laid out, bought, set and written on before and during a job. Plain data: text, page and screen print it. */
export type JobCard = {
  readonly title: string;
  /** The code of the language it is written in. */
  readonly language: string;
  readonly machine: string;
  readonly edition: string;
  readonly source: string;
  readonly demonstration: boolean;
  /** What to lay out, phase by phase; a phase that needs no tool is left out. */
  readonly tools: readonly { readonly phase: string; readonly tools: readonly ToolSpec[] }[];
  readonly settings: readonly StepSettings[];
  readonly parts: {
    /** Bought for this job and used once. */
    readonly singleUse: readonly PartSpec[];
    /** Bought by the litre, the tube or the metre. */
    readonly consumables: readonly PartSpec[];
    /** Measured first, bought where the rule says so. */
    readonly measured: readonly PartSpec[];
    readonly reused: readonly PartSpec[];
  };
  readonly fills: readonly { readonly what: string; readonly amount: Printed }[];
  /** Bags, slots and cards in the order they are filled. */
  readonly stowage: readonly { readonly where: string; readonly items: readonly StowedItem[] }[];
  readonly timers: readonly TimerSpec[];
  readonly limits: readonly Limit[];
  readonly rules: readonly Pick<Rule, 'id' | 'say' | 'whose' | 'figures'>[];
};

type StowedItem = { readonly what: string; readonly quantity: number };

/** The wrench settings of one tightening or slackening step. */
export type StepSettings = {
  readonly phase: string;
  readonly pattern: string;
  /** The question and the answers under which this step is done; null for always. */
  readonly onlyIf: { readonly ask: string; readonly answers: readonly string[] } | null;
  readonly passes: readonly PassSetting[];
};

/** The job card of a procedure. */
export function jobCard(procedure: Procedure): JobCard {
  const { title, language, machine, edition, source, demonstration } = procedure;
  const steps = procedure.phases.flatMap((phase) => phase.steps);
  const parts = [...procedure.parts.values()];
  const bought = parts.filter(({ use }) => use === 'new');
  return {
    ...{ title, language, machine, edition, source, demonstration },
    tools: procedure.phases
      .map((phase) => ({ phase: phase.say, tools: toolsOf(procedure, phase.steps) }))
      .filter(({ tools }) => tools.length > 0),
    settings: procedure.phases.flatMap((phase) =>
      phase.steps.flatMap((step) => stepSettings(procedure, phase.say, step)),
    ),
    parts: {
      singleUse: bought.filter(({ consumable }) => !consumable),
      consumables: parts.filter(({ consumable }) => consumable),
      measured: parts.filter(({ use, consumable }) => use === 'measured' && !consumable),
      reused: parts.filter(({ use, consumable }) => use === 'reuse' && !consumable),
    },
    fills: steps.flatMap((step) => (step.kind === 'fill' ? [{ what: step.what, amount: step.amount }] : [])),
    stowage: stowageOf(steps),
    timers: [...procedure.timers.values()],
    limits: [...procedure.limits.values()],
    rules: [...procedure.rules.values()],
  };
}

/** Tools of steps and of their passes, each once, in the order they are first needed. */
function toolsOf({ tools }: Procedure, steps: readonly Step[]): readonly ToolSpec[] {
  const ids = steps.flatMap((step) => [
    ...step.tools,
    ...(step.kind === 'tighten' || step.kind === 'slacken' ? step.passes.flatMap(({ tool }) => tool ?? []) : []),
  ]);
  return [...new Set(ids)].flatMap((id) => tools.get(id) ?? []);
}

function stepSettings(procedure: Procedure, phase: string, step: Step): readonly StepSettings[] {
  if (step.kind !== 'tighten' && step.kind !== 'slacken') return [];
  const pattern = procedure.patterns.get(step.pattern);
  return [
    {
      phase,
      pattern: pattern?.say ?? step.pattern,
      onlyIf: conditionOf(procedure, step),
      passes: settingsOf(procedure, step.passes),
    },
  ];
}

function conditionOf({ phases }: Procedure, { only }: Step): StepSettings['onlyIf'] {
  if (!only) return null;
  const question = phases.flatMap(({ steps }) => steps).find(({ id }) => id === only.step)?.question;
  const answers = only.answers.map((id) => question?.answers.find((answer) => answer.id === id)?.say[0] ?? id);
  return { ask: question?.ask ?? only.step, answers };
}

function stowageOf(steps: readonly Step[]): JobCard['stowage'] {
  const places = new Map<string, StowedItem[]>();
  for (const { where, what, quantity } of steps.flatMap((step) => step.stow))
    places.set(where, [...(places.get(where) ?? []), { what, quantity }]);
  return [...places].map(([where, items]) => ({ where, items }));
}
