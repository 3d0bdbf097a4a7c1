import { z } from 'zod';
import { MILESTONES } from '../procedure';
import { pass, recovery } from './passes';
import { id, name, quantity, repeat, text } from './words';

const ids = z.array(id).min(1).max(40);

/** What may be answered: an id and the ways to say it. */
const answers = z.record(id, z.array(name).min(1).max(6));

const readBack = z.strictObject({ ask: text, right: answers, wrong: answers, 'if-wrong': text }).meta({
  description: 'A hold point: the answer is said aloud and must be right. Give at least two plausible wrong ones.',
});

const finding = z.strictObject({ ask: text, answers }).meta({
  id: 'finding',
  description: 'Something that must be found out and said before the job goes on; every answer is allowed.',
});

const worksOut = ids.optional().meta({ description: 'Rules that the readings are worked out by.' });

const common = {
  id,
  for: repeat.optional(),
  say: text,
  warnings: z.array(text).max(6).optional().meta({ description: 'Can hurt a person. Spoken first.' }),
  cautions: z.array(text).max(6).optional().meta({ description: 'Can damage the machine.' }),
  notes: z.array(text).max(6).optional().meta({ description: 'Good to know.' }),
  tools: ids.optional(),
  parts: ids.optional(),
  opens: ids.optional().meta({ description: 'Loose ends this step leaves behind.' }),
  closes: ids.optional().meta({ description: 'Loose ends this step puts right.' }),
  milestone: z.enum(MILESTONES).optional(),
  'read-back': readBack.optional(),
  finding: finding.optional(),
  'starts-timers': ids.optional().meta({ description: 'Timers that run from the moment this step is done.' }),
  'needs-timers': ids.optional().meta({ description: 'Timers that must have run out before this step is done.' }),
  'only-if': z
    .strictObject({ step: id, answers: ids })
    .optional()
    .meta({ description: 'Done only where an earlier question was answered so.' }),
  stow: z
    .array(z.strictObject({ where: name, what: name, quantity: z.number().int().min(1).max(500) }))
    .max(40)
    .optional()
    .meta({ description: 'Where parts that came off are kept, and which way up.' }),
  record: z
    .record(id, name)
    .optional()
    .meta({ description: 'Words to take down for the record, such as a serial number.' }),
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
      readings: z
        .record(id, name)
        .meta({ description: 'An id and a name for each reading, in the order they are taken.' }),
      unit: z.string().max(12),
      between: z
        .tuple([z.number().min(0), z.number().min(0)])
        .meta({ description: 'Outside these a reading was misheard.' }),
      decimals: z.number().int().min(0).max(4),
      limit: id.optional(),
      'works-out': worksOut,
    }),
    z.strictObject({ kind: z.literal('wait'), ...common, timer: id }),
    z.strictObject({ kind: z.literal('fill'), ...common, what: name, amount: quantity, 'works-out': worksOut }),
  ])
  .meta({ id: 'step' });

const block = z
  .strictObject({ kind: z.literal('each'), for: repeat, steps: z.array(step).min(1).max(200) })
  .meta({ description: 'Steps done in full for the first side, then in full for the next.' });

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
