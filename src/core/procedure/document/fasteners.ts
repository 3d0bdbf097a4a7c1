import { z } from 'zod';
import { GRADES } from '../../fastening/grade';
import { name, point, quantity, repeat } from './words';

const number = z.number().int().min(1).max(200);
const numbers = z.array(number).min(1).max(64);

const single = z.strictObject({ number, at: point, say: name, row: name });

const circle = z
  .strictObject({
    count: z.number().int().min(3).max(48),
    diameter: z.number().positive().max(10_000),
    first: z
      .number()
      .min(0)
      .max(360)
      .optional()
      .meta({ description: 'Degrees clockwise from the top. 0 when left out.' }),
  })
  .meta({ description: 'Evenly spaced on a circle, numbered clockwise; each is called by its place on a clock face.' });

const line = z.strictObject({ say: z.array(name).min(1).max(32), at: z.array(z.number()).min(1).max(32) });

const grid = z
  .strictObject({
    columns: line,
    rows: line,
    numbers: z
      .array(z.array(z.number().int().min(0).max(200)).min(1).max(32))
      .min(1)
      .max(32),
  })
  .meta({
    description: 'Rows and columns with the bolt numbers laid out as in the drawing; 0 where there is no bolt.',
  });

const detail = z
  .strictObject({
    numbers,
    group: name.optional(),
    length: quantity.optional(),
    hole: z.enum(['blind', 'wet', 'through']).optional(),
    sealer: name.optional(),
    thread: name.optional().meta({ description: 'Size and pitch as designated: M10x1.25, M10, 3/8-16.' }),
    grade: z.enum(GRADES).optional().meta({ description: 'Property class (ISO 898-1) or grade (SAE J429).' }),
  })
  .meta({ description: 'What some of the fasteners have in common: group, length, hole, sealer, thread, grade.' });

/** How fasteners are put in order: a list, a generated order, or another order turned round. */
export const order = z.union([numbers, z.string()]).meta({
  id: 'order',
  description: 'A list of numbers, centre-out, cross, reverse, or reverse of <pass>.',
});

/** Some of the fasteners: a group's name or a list of numbers. */
export const subset = z
  .union([numbers, name])
  .meta({ id: 'subset', description: 'A group by its name, or a list of numbers.' });

export const pattern = z.strictObject({
  for: repeat.optional(),
  say: name,
  joint: z
    .enum(['head', 'flange', 'plain'])
    .optional()
    .meta({ description: 'A head is gasketed and never eased bolt by bolt; its order is never generated unasked.' }),
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
  order: order.optional().meta({ description: 'The tightening order that passes follow unless they give their own.' }),
  generated: z.literal(true).optional().meta({ description: 'Says that the order of a head is not from its maker.' }),
});

export type PatternText = z.infer<typeof pattern>;
export type OrderText = z.infer<typeof order>;
export type SubsetText = z.infer<typeof subset>;
