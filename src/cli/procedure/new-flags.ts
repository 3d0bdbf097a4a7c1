import { parseArgs } from 'node:util';

const text = { type: 'string' } as const;
const yes = { type: 'boolean' } as const;

const OPTIONS = {
  machine: text,
  title: text,
  id: text,
  edition: text,
  source: text,
  demonstration: yes,
  name: text,
  joint: text,
  'viewed-from': text,
  circle: text,
  grid: text,
  numbers: text,
  columns: text,
  rows: text,
  at: text,
  order: text,
  generated: yes,
  subset: { ...text, multiple: true },
  passes: text,
  lubrication: text,
  bolts: text,
  wrench: text,
  over: text,
} as const;

export const NEW_USAGE = `new FILE [flags]   writes a commented document; asks for what is missing when run on a terminal
  --machine WORDS --title WORDS      what is worked on, and what the job is called (both needed)
  --circle N,DIAMETER                N fasteners on a circle, millimetres
  --grid COLSxROWS,PITCHXxPITCHY     rows and columns, millimetres; with --numbers "5 1 3 / 6 2 4" as in the picture,
                                     --columns "front, middle, rear" and --rows "inlet side, exhaust side"
  --at "x,y x,y ..."                 a place for each, millimetres to the right and down (one of the three is needed)
  --order "1 5 3 ..."|centre-out|cross   the tightening order (needed); --generated allows a rule on a head
  --passes "30 N·m (22 lbf·ft), 50 N·m, 90° (85–95), repeat, slacken 180°, wait 10 min"   as printed (needed)
  --subset NAME=1-10                 names some of the fasteners; a pass ends in "of NAME"; may be given again
  --name WORDS --joint head|flange|plain --viewed-from WORDS --lubrication WORDS --bolts new|reuse
  --wrench "20–100 N·m"              the range of the torque wrench
  --over restart-bolt|restart-all|accept   what the manual says about a bolt turned too far
  --id ID --edition WORDS --source WORDS --demonstration`;

/** The words of the command line by flag, or what is wrong with them. */
export function newFlags(argv: readonly string[]) {
  try {
    return parseArgs({ args: [...argv], options: OPTIONS, allowPositionals: true, strict: true });
  } catch (reason) {
    return reason instanceof Error ? reason.message : String(reason);
  }
}

export type NewFlags = Exclude<ReturnType<typeof newFlags>, string>['values'];
