import { z } from 'zod';
import { MILESTONES } from '../procedure';
import { pass, recovery } from './passes';
import { id, name, quantity, repeat, text } from './words';

const ids = z.array(id).min(1).max(40);

/** What may be answered: an id and the ways to say it. */
const answers = z.record(id, z.array(name).min(1).max(6));

const readBack = z.strictObject({ ask: text, right: answers, wrong: answers, 'if-wrong': text });

const finding = z.strictObject({ ask: text, answers }).meta({
  id: 'finding',
});

const worksOut = ids.optional();

const common = {
  id,
  for: repeat.optional(),
  say: text,
  warnings: z.array(text).max(6).optional(),
  cautions: z.array(text).max(6).optional(),
  notes: z.array(text).max(6).optional(),
  tools: ids.optional(),
  parts: ids.optional(),
  opens: ids.optional(),
  closes: ids.optional(),
  milestone: z.enum(MILESTONES).optional(),
  'read-back': readBack.optional(),
  finding: finding.optional(),
  'starts-timers': ids.optional(),
  'needs-timers': ids.optional(),
  'only-if': z.strictObject({ step: id, answers: ids }).optional(),
  stow: z
    .array(z.strictObject({ where: name, what: name, quantity: z.number().int().min(1).max(500) }))
    .max(40)
    .optional(),
  record: z.record(id, name).optional(),
};

const tightening = {
  ...common,
  pattern: id,
  passes: z.array(pass).min(1).max(24),
  tool: id.optional(),
  lubrication: name.optional(),
  recovery: recovery.optional(),
};

const step = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('do').optional(), ...common }),
    z.strictObject({ kind: z.literal('remove'), ...common }),
    z.strictObject({ kind: z.literal('refit'), ...common }),
    z.strictObject({ kind: z.literal('hold'), ...common }),
    z.strictObject({ kind: z.literal('tighten'), ...tightening }),
    z.strictObject({ kind: z.literal('slacken'), ...tightening }),
    z.strictObject({
      kind: z.literal('measure'),
      ...common,
      readings: z.record(id, name),
      unit: z.string().max(12),
      between: z.tuple([z.number().min(0), z.number().min(0)]),
      decimals: z.number().int().min(0).max(4),
      limit: id.optional(),
      'works-out': worksOut,
    }),
    z.strictObject({ kind: z.literal('wait'), ...common, timer: id }),
    z.strictObject({ kind: z.literal('fill'), ...common, what: name, amount: quantity, 'works-out': worksOut }),
  ])
  .meta({ id: 'step' });

const block = z.strictObject({ kind: z.literal('each'), for: repeat, steps: z.array(step).min(1).max(200) });

export const phase = z.strictObject({
  id,
  say: name,
  steps: z
    .array(z.discriminatedUnion('kind', [step, block]))
    .min(1)
    .max(300),
});

export type StepText = z.infer<typeof step>;
export type BlockText = z.infer<typeof block>;
export type PhaseText = z.infer<typeof phase>;
