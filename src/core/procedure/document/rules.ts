import { z } from 'zod';
import { id, name, quantity, repeat } from './words';

const named = {
  for: repeat.optional(),
  say: name,
  whose: name,
};

const banks = z.array(z.array(id).min(1).max(12)).min(1).max(8).optional();

const grade = z.strictObject({
  say: name,
  height: quantity,
  thickness: quantity,
});

const COOLANTS = ['ethylene-glycol-handbook', 'ethylene-glycol-reprinted', 'propylene-glycol-lange'] as const;

/** How readings are worked out: the kind of sum, with the figures its maker gives. */
export const rule = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('compression'),
    ...named,
    by: z.enum(['share-of-highest', 'spread', 'below-average']),
    percent: quantity,
    least: quantity.optional(),
    banks,
  }),
  z.strictObject({
    kind: z.literal('leak-down'),
    ...named,
    below: quantity,
    fed: quantity.optional(),
    banks,
  }),
  z.strictObject({
    kind: z.literal('flatness'),
    ...named,
    along: quantity,
    across: quantity.optional(),
    face: z.tuple([quantity, quantity]).optional(),
  }),
  z.strictObject({
    kind: z.literal('metal'),
    ...named,
    most: quantity,
    with: z.array(id).min(1).max(8).optional(),
  }),
  z.strictObject({
    kind: z.literal('gasket-grade'),
    ...named,
    grades: z.array(grade).min(1).max(12),
  }),
  z.strictObject({
    kind: z.literal('shims'),
    ...named,
    wanted: quantity,
    sizes: quantity,
    step: quantity,
  }),
  z.strictObject({
    kind: z.literal('stretch'),
    ...named,
    window: quantity,
    'if-under': name,
    'if-over': name,
  }),
  z.strictObject({
    kind: z.literal('reuse'),
    ...named,
    by: z.enum(['length', 'thread-difference', 'final-torque']),
    limit: quantity,
  }),
  z.strictObject({
    kind: z.literal('turn'),
    ...named,
    pitch: quantity,
    'joint-to-bolt': z.number().positive().max(100),
  }),
  z.strictObject({
    kind: z.literal('coolant'),
    ...named,
    capacity: quantity,
    wanted: quantity,
    concentrate: quantity.optional(),
    present: quantity.optional(),
    freezes: z.enum(COOLANTS),
  }),
]);

export type RuleText = z.infer<typeof rule>;
