import type { Built } from '../build/build-procedure';
import type { Path, Report } from '../issue';
import { MILESTONES } from '../procedure';
import { type AnswersOf, type Condition, conditionOf, meet, without } from './condition';

/** Walks the job in order and keeps count of what is open, branch by branch. */
export function checkLooseEnds({ procedure, steps, written }: Built, answersOf: AnswersOf, report: Report): void {
  const open = new Map<string, Condition>();
  const everOpened = new Set<string>();
  for (const { step, at } of steps) {
    const condition = conditionOf(step);
    if (step.milestone !== undefined) {
      const reached = MILESTONES.indexOf(step.milestone);
      for (const [id, when] of open) {
        const end = procedure.looseEnds.get(id);
        if (end === undefined || MILESTONES.indexOf(end.blocks) > reached || !meet(when, condition)) continue;
        report.error('milestone-while-open', [...at, 'milestone'], id, { say: end.say, id });
      }
    }
    for (const [index, id] of step.closes.entries()) {
      const when = open.get(id);
      if (when === undefined) {
        if (procedure.looseEnds.has(id)) reportNotOpen(id, everOpened.has(id), [...at, 'closes', index], report);
        continue;
      }
      const left = without(when, condition, answersOf);
      if (left === null) open.delete(id);
      else open.set(id, left);
    }
    for (const [index, id] of step.opens.entries()) {
      const when = open.get(id);
      if (when !== undefined && meet(when, condition))
        report.error('opened-twice', [...at, 'opens', index], id, { id });
      open.set(id, when === undefined ? condition : 'always');
      everOpened.add(id);
    }
  }
  for (const id of open.keys()) {
    const place = written['loose-ends'].get(id);
    if (place !== undefined) report.warning('loose-end-never-closed', place, id, { id });
  }
}

function reportNotOpen(id: string, opened: boolean, at: Path, report: Report): void {
  report.error(opened ? 'closed-before-opened.again' : 'closed-before-opened', at, id, { id });
}
