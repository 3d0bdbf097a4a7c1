import { z } from 'zod';
import { MILESTONES } from '../procedure';
import { pattern } from './fasteners';
import { rule } from './rules';
import { phase } from './steps';
import { id, language, name, quantity, repeat, text } from './words';

const tool = z.strictObject({
  for: repeat.optional(),
  say: name,
  drive: name.optional(),
  socket: name.optional(),
  range: quantity.optional(),
});

const part = z.strictObject({
  for: repeat.optional(),
  say: name,
  quantity: z.number().int().min(1).max(1000),
  use: z.enum(['new', 'reuse', 'measured']),
  rule: text.optional(),
  consumable: z.boolean().optional(),
});

const looseEnd = z.strictObject({
  for: repeat.optional(),
  say: name,
  kind: z.enum(['removed', 'unplugged', 'opened', 'rag']),
  blocks: z.enum(MILESTONES),
});

const timer = z.strictObject({ for: repeat.optional(), say: name, time: quantity });

const limit = z.strictObject({
  for: repeat.optional(),
  say: name,
  whose: name,
  least: quantity.optional(),
  most: quantity.optional(),
});

/** The shape of a procedure document as written by hand: the only source of that shape, for the checker and for editors. */
export const document = z.strictObject({
  format: z.literal(1),
  language,
  id,
  title: name,
  edition: name,
  demonstration: z.boolean(),
  source: text,
  machine: name,
  tools: z.record(id, tool).optional(),
  parts: z.record(id, part).optional(),
  patterns: z.record(id, pattern).optional(),
  'loose-ends': z.record(id, looseEnd).optional(),
  timers: z.record(id, timer).optional(),
  limits: z.record(id, limit).optional(),
  rules: z.record(id, rule).optional(),
  phases: z.array(phase).min(1).max(40),
});

export type DocumentText = z.infer<typeof document>;
export type ToolText = z.infer<typeof tool>;
export type PartText = z.infer<typeof part>;
export type LooseEndText = z.infer<typeof looseEnd>;
export type TimerText = z.infer<typeof timer>;
export type LimitText = z.infer<typeof limit>;
