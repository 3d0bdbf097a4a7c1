import { z } from 'zod';
import { FAULTS, RECOVERY_ACTIONS } from '../procedure';
import { order, subset } from './fasteners';
import { id, name, quantity, text } from './words';

const rule = z.strictObject({ action: z.enum(RECOVERY_ACTIONS), say: text });

export const recovery = z.partialRecord(z.enum(FAULTS), rule).meta({
  id: 'recovery',
});

/** One stage over some of the fasteners. Exactly one of torque, repeat, angle, slacken and wait says what is done. */
export const pass = z
  .strictObject({
    id,
    say: name,
    torque: quantity.optional(),
    repeat: quantity.optional(),
    angle: quantity.optional(),
    slacken: quantity.optional(),
    wait: id.optional(),
    window: quantity.optional(),
    floor: quantity.optional(),
    swings: z.number().int().min(1).max(12).optional(),
    of: subset.optional(),
    order: order.optional(),
    generated: z.literal(true).optional(),
    tool: id.optional(),
    lubrication: name.optional(),
    recovery: recovery.optional(),
  })
  .meta({ id: 'pass' });

export type PassText = z.infer<typeof pass>;
export type RecoveryText = z.infer<typeof recovery>;
