import { z } from 'zod';
import { id, name, quantity, repeat } from './words';

const named = {
  for: repeat.optional(),
  say: name.meta({ description: 'What the rule is called.' }),
  whose: name.meta({ description: 'Whose rule it is: makers differ.' }),
};

const banks = z
  .array(z.array(id).min(1).max(12))
  .min(1)
  .max(8)
  .optional()
  .meta({ description: 'Readings of each bank from one end to the other: neighbours are by place, not by number.' });

const grade = z.strictObject({
  say: name.meta({ description: 'What the grade is called.' }),
  height: quantity.meta({ description: 'From which piston height to which: 0.76–0.81 mm.' }),
  thickness: quantity.meta({ description: 'How thick it is.' }),
});

const COOLANTS = ['ethylene-glycol-handbook', 'ethylene-glycol-reprinted', 'propylene-glycol-lange'] as const;

/** How readings are worked out: the kind of sum, with the figures its maker gives. */
export const rule = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('compression').meta({ description: 'Pressures of all cylinders against one another.' }),
    ...named,
    by: z
      .enum(['share-of-highest', 'spread', 'below-average'])
      .meta({ description: 'The lowest against the highest, the fall between them, or each against the average.' }),
    percent: quantity.meta({ description: 'How much, in percent.' }),
    least: quantity.optional().meta({ description: 'What every one must reach besides.' }),
    banks,
  }),
  z.strictObject({
    kind: z.literal('leak-down').meta({ description: 'What is lost of the air fed into each cylinder.' }),
    ...named,
    below: quantity.meta({ description: 'A leak below this is good.' }),
    fed: quantity.optional().meta({ description: 'The pressure fed, where the readings are the pressure held.' }),
    banks,
  }),
  z.strictObject({
    kind: z.literal('flatness').meta({ description: 'Six lines of one face: long edges, ends, diagonals.' }),
    ...named,
    along: quantity.meta({ description: 'A gap, or a share of the length measured: 0.075 %.' }),
    across: quantity.optional().meta({ description: 'The same for the two ends; as along when left out.' }),
    face: z
      .tuple([quantity, quantity])
      .optional()
      .meta({ description: 'Length and width, for a share of the length.' }),
  }),
  z.strictObject({
    kind: z.literal('metal').meta({ description: 'Metal taken off faces that share a budget.' }),
    ...named,
    most: quantity.meta({ description: 'How much may be gone in all.' }),
    with: z.array(id).min(1).max(8).optional().meta({ description: 'Steps whose readings share this budget.' }),
  }),
  z.strictObject({
    kind: z.literal('gasket-grade').meta({ description: 'Piston heights, two to a piston, choose a gasket.' }),
    ...named,
    grades: z.array(grade).min(1).max(12).meta({ description: 'The grades there are; readings are two to a piston.' }),
  }),
  z.strictObject({
    kind: z.literal('shims').meta({ description: 'The shim in each valve, then its gap.' }),
    ...named,
    wanted: quantity.meta({ description: 'What it should come to.' }),
    sizes: quantity.meta({ description: 'The smallest and the largest there is: 2.00–3.50 mm.' }),
    step: quantity.meta({ description: 'From one size to the next.' }),
  }),
  z.strictObject({
    kind: z.literal('stretch').meta({ description: 'The length of each bolt slack, then tight.' }),
    ...named,
    window: quantity.meta({ description: 'The least and the most that is right.' }),
    'if-under': name.meta({ description: 'What to do below it, in the maker’s words.' }),
    'if-over': name.meta({ description: 'What to do above it, in the maker’s words.' }),
  }),
  z.strictObject({
    kind: z.literal('reuse').meta({ description: 'Which used bolts may go back in.' }),
    ...named,
    by: z
      .enum(['length', 'thread-difference', 'final-torque'])
      .meta({ description: 'What is measured on a used bolt.' }),
    limit: quantity.meta({ description: 'The most, or for a torque what must be exceeded.' }),
  }),
  z.strictObject({
    kind: z.literal('turn').meta({ description: 'How much longer a bolt gets for an angle.' }),
    ...named,
    pitch: quantity.meta({ description: 'Pitch of the thread.' }),
    'joint-to-bolt': z
      .number()
      .positive()
      .max(100)
      .meta({ description: 'How many times stiffer the joint is than the bolt.' }),
  }),
  z.strictObject({
    kind: z
      .literal('coolant')
      .meta({ description: 'Protection, mix and concentrate, asked for at a step that fills.' }),
    ...named,
    capacity: quantity.meta({ description: 'What the system holds.' }),
    wanted: quantity.meta({ description: 'What it should come to.' }),
    concentrate: quantity.optional().meta({ description: 'Strength of what is poured in; 100 % when left out.' }),
    present: quantity.optional().meta({ description: 'Strength of what stays in the system.' }),
    freezes: z.enum(COOLANTS).meta({ description: 'The table of freezing points that belongs to the fluid.' }),
  }),
]);

export type RuleText = z.infer<typeof rule>;
