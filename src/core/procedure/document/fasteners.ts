import { z } from 'zod';
import { GRADES } from '../../fastening/grade';
import { name, point, quantity, repeat } from './words';

const number = z.number().int().min(1).max(200);
const numbers = z.array(number).min(1).max(64);

const single = z.strictObject({ number, at: point, say: name, row: name });

const circle = z.strictObject({
  count: z.number().int().min(3).max(48),
  diameter: z.number().positive().max(10_000),
  first: z.number().min(0).max(360).optional(),
});

const line = z.strictObject({ say: z.array(name).min(1).max(32), at: z.array(z.number()).min(1).max(32) });

const grid = z.strictObject({
  columns: line,
  rows: line,
  numbers: z
    .array(z.array(z.number().int().min(0).max(200)).min(1).max(32))
    .min(1)
    .max(32),
});

const detail = z.strictObject({
  numbers,
  group: name.optional(),
  length: quantity.optional(),
  hole: z.enum(['blind', 'wet', 'through']).optional(),
  sealer: name.optional(),
  thread: name.optional(),
  grade: z.enum(GRADES).optional(),
});

/** How fasteners are put in order: a list, a generated order, or another order turned round. */
export const order = z.union([numbers, z.string()]).meta({
  id: 'order',
});

/** Some of the fasteners: a group's name or a list of numbers. */
export const subset = z.union([numbers, name]).meta({ id: 'subset' });

export const pattern = z.strictObject({
  for: repeat.optional(),
  say: name,
  joint: z.enum(['head', 'flange', 'plain']).optional(),
  'viewed-from': name,
  outline: z.array(point).min(3).max(64).optional(),
  landmarks: z
    .array(z.strictObject({ say: name, at: point }))
    .max(16)
    .optional(),
  fasteners: z.array(single).min(1).max(64).optional(),
  circle: circle.optional(),
  grid: grid.optional(),
  details: z.array(detail).max(64).optional(),
  order: order.optional(),
  generated: z.literal(true).optional(),
});

export type PatternText = z.infer<typeof pattern>;
export type OrderText = z.infer<typeof order>;
export type SubsetText = z.infer<typeof subset>;
