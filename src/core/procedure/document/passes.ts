import { z } from 'zod';
import { FAULTS, RECOVERY_ACTIONS } from '../procedure';
import { order, subset } from './fasteners';
import { id, name, quantity, text } from './words';

const rule = z.strictObject({ action: z.enum(RECOVERY_ACTIONS), say: text });

export const recovery = z.partialRecord(z.enum(FAULTS), rule).meta({
  id: 'recovery',
  description: 'What to do when a fastener goes wrong, by fault. A fault left out means: stop, check the manual.',
});

/** One stage over some of the fasteners. Exactly one of torque, repeat, angle, slacken and wait says what is done. */
export const pass = z
  .strictObject({
    id,
    say: name,
    torque: quantity.optional(),
    repeat: quantity
      .optional()
      .meta({ description: 'The same torque once more, over fasteners that already have it.' }),
    angle: quantity.optional().meta({ description: 'A further turn with its window: 90° (85–95).' }),
    slacken: quantity.optional().meta({ description: 'How far each fastener is backed off.' }),
    wait: id.optional().meta({ description: 'The timer to wait for; it is started when the pass is reached.' }),
    window: quantity.optional().meta({ description: 'The lowest and highest torque that count: 38–42 N·m.' }),
    floor: quantity
      .optional()
      .meta({ description: 'The torque read at the end of an angle must be over this: 90 lbf·ft.' }),
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
