import type { Entry } from '../../core/job/entry';
import type { Plan } from '../../core/job/plan';
import type { ToolSpec } from '../../core/procedure/procedure';
import { toolsOf, type WrenchRecord } from '../../core/record/tools';
import type { PlainTable } from '../../ui/record/plain-list';
import { dateAndTime } from '../../ui/time-words';
import type { Say } from '../../ui/words/words';
import type { RecordWords } from './record-lists';

/** The tools of the document, the wrenches that stood for them, and until when each was calibrated. */
export function toolList(plan: Plan, live: readonly Entry[], { say }: Pick<RecordWords, 'say'>): PlainTable {
  const rows = toolsOf(plan, live).flatMap(({ tool, wrenches, droppedUnnamed }) => [
    ...(wrenches.length === 0 || droppedUnnamed
      ? [{ key: tool.id, cells: unnamedCells(tool, droppedUnnamed, say) }]
      : []),
    ...wrenches.map((one) => ({
      key: `${tool.id} ${one.chosen.seq}`,
      cells: [toolWords(tool), ...wrenchCells(one, say)],
    })),
  ]);
  const columns = [
    say('column-tool'),
    say('column-wrench'),
    say('column-scale'),
    say('column-due'),
    say('column-taken'),
    say('column-doubt'),
  ];
  return { say: say('list-tools', { count: rows.length }), columns, rows };
}

const toolWords = ({ say, drive, socket }: ToolSpec): string => [say, drive, socket].filter(Boolean).join(', ');

/** Nothing is known of a wrench that nobody named, but that it fell. */
const unnamedCells = (tool: ToolSpec, dropped: Entry | null, say: Say): readonly string[] => [
  toolWords(tool),
  tool.range || dropped ? say('tool-unnamed') : '',
  '',
  '',
  '',
  dropped ? say('tool-dropped', { when: dateAndTime(say, dropped.at) }) : '',
];

function wrenchCells({ wrench, chosen, lastUsed, dropped, doubts }: WrenchRecord, say: Say): readonly string[] {
  const { least, most, unit, graduation } = wrench;
  return [
    wrench.say,
    say('tool-scale', { least, most, unit, graduation }),
    wrench.calibrationDue ?? say('tool-due-unknown'),
    dateAndTime(say, chosen.at),
    [
      ...(dropped ? [say('tool-dropped', { when: dateAndTime(say, dropped.at) })] : []),
      ...(doubts.includes('calibration-overdue') ? [say(lastUsed ? 'tool-overdue' : 'tool-overdue-unused')] : []),
    ].join(' '),
  ];
}
