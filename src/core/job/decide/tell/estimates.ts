import { isGrade } from '../../../fastening/grade';
import { degrees, percent } from '../../../fastening/quantity';
import { isUnitName } from '../../../fastening/unit';
import { reply } from '../../../phrasing/reply';
import type { Fastening } from '../../../sums/estimate';
import { type Command, optionIn, readingIn } from '../../command';
import { type Decision, refused, told } from '../../decision';
import { fastenedBy } from '../../fastened-by';
import type { Job } from '../../job';
import { isTorque } from '../../setting';
import type { AtPass } from '../at-pass';

/** Rough sums about any fastener somebody names. They answer and no more: nothing of them is kept, let alone set. */
export function estimated(job: Job, c: Command): Decision {
  const { estimates } = job.plan.procedure;
  const thread = optionIn(c, 'thread');
  const grade = optionIn(c, 'grade');
  if (thread === undefined) return refused(reply('not-here', {}));
  const bolt: Fastening = { thread, grade: grade !== undefined && isGrade(grade) ? grade : null };
  if (c.rule === 'tell-proof') return told(...estimates.proof(bolt));
  if (c.rule === 'tell-estimate') {
    const share = readingIn(c, 'share');
    return told(...estimates.torque(bolt, share ? percent(share.value) : null));
  }
  const torque = readingIn(c, 'setting');
  if (!torque || torque.unit === null || !isUnitName(torque.unit)) return refused(reply('not-here', {}));
  return told(...estimates.tension(bolt, { value: torque.value, unit: torque.unit }));
}

/** The same of the fastener and the figure of this pass: the tension of a torque, the stretch of an angle. */
export function estimatedHere(job: Job, at: AtPass | undefined): Decision {
  const bolt = at && fastenedBy(job, at.step, at.pass);
  if (!at || !bolt) return refused(reply('not-here', {}));
  const { estimates } = job.plan.procedure;
  if (isTorque(at.pass)) return told(...estimates.tension(bolt, at.pass.target));
  if (at.pass.kind === 'angle') return told(...estimates.stretch(bolt, degrees(at.pass.degrees)));
  return refused(reply('not-here', {}));
}
