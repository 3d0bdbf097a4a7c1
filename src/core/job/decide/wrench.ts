import { convert } from '../../fastening/quantity';
import { roundedFigure } from '../../fastening/shown-figure';
import { degrees, digits, quantity, type Reply, reply, text } from '../../phrasing/reply';
import { type AdapterOn, isSameAdapter, wayOf } from '../adapter';
import { refusalReply, setWrench, toolOf } from '../announce/setting';
import type { ChosenWrench } from '../chosen-wrench';
import { type Command, integerIn, readingIn } from '../command';
import { asks, type Decision, does, refused, told } from '../decision';
import type { EntryBody, Moment } from '../entry';
import type { Job } from '../job';
import { isSetRight, isTorque, settingOf, type TorquePass } from '../setting';
import { here, passAt } from './at-pass';
import { after, settle } from './settle';

/** The number on the tool, read back. Only the right number lets the pass begin, and none does on the wrong tool. */
export function setAt(job: Job, c: Command): Decision {
  const at = passAt(job);
  const given = readingIn(c, 'setting');
  if (at?.part !== 'set' || given === undefined) return refused(reply('not-here', {}));
  if (isTorque(at.pass)) return torqueSetAt(job, at.pass, here(at), given);
  if (at.pass.kind !== 'angle') return refused(reply('not-here', {}));
  const wanted = { value: at.pass.degrees, unit: 'deg' as const };
  if (given.value !== wanted.value || (given.unit !== null && given.unit !== wanted.unit))
    return refused(reply('setting-wrong', { given: digits(given.value), setting: quantity(wanted) }));
  return does(
    [{ kind: 'setting-confirmed', ...here(at), ...wanted }],
    [reply('setting-taken', { setting: quantity(wanted) })],
  );
}

type Given = { readonly value: number; readonly unit: string | null };

function torqueSetAt(job: Job, pass: TorquePass, at: ReturnType<typeof here>, given: Given): Decision {
  const setting = settingOf(job, pass);
  if (setting.kind === 'refused') return refused(refusalReply(setting.why, text(toolOf(job, pass)), setting.target));
  const set = quantity(setting.set);
  // "Pounds" alone could be twelve times off.
  if (given.unit === 'lbf') return refused(reply('which-pounds', { setting: set }));
  if (!isSetRight(setting, given.value, given.unit))
    return refused(reply('setting-wrong', { given: digits(given.value), setting: set }));
  const said = [setting.set, ...(setting.set.also ?? [])].find((one) => one.unit === given.unit) ?? setting.set;
  return does(
    [{ kind: 'setting-confirmed', ...at, value: said.value, unit: said.unit }],
    [reply('setting-taken', { setting: quantity(said) })],
  );
}

/** An adapter from its length, which always names its unit, and its angle, straight ahead where none is said. */
function adapterIn(c: Command): AdapterOn | undefined {
  const given = readingIn(c, 'length');
  if (given?.unit !== 'in' && given?.unit !== 'mm') return undefined;
  const millimetres = convert({ value: given.value, unit: given.unit }, 'mm');
  if (!millimetres.ok || millimetres.value <= 0) return undefined;
  return { millimetres: millimetres.value, degrees: integerIn(c, 'degrees') ?? 0 };
}

function lengthSaid(c: Command): Reply['slots'][string] {
  const given = readingIn(c, 'length');
  return digits(given?.value ?? 0, given?.unit === 'in' ? 'in' : 'mm');
}

/** Asked back with its digits; the same adapter once more confirms it. */
export function adapterOn(job: Job, c: Command, now: Moment): Decision {
  const at = passAt(job);
  const adapter = adapterIn(c);
  if (!at || !isTorque(at.pass) || !adapter) return refused(reply('not-here', {}));
  const asked = job.pending?.kind === 'adapter' ? job.pending : undefined;
  if (asked && asked.millimetres !== null && isSameAdapter({ ...asked, millimetres: asked.millimetres }, adapter))
    return adapterConfirmed(job, adapter, now);
  return asks(
    [{ kind: 'asked', question: { kind: 'adapter', ...adapter } }],
    reply('confirm-adapter', { length: lengthSaid(c), way: wayOf(adapter) }),
  );
}

export function adapterOff(job: Job): Decision {
  if (job.adapter === null) return refused(reply('not-here', {}));
  return asks(
    [{ kind: 'asked', question: { kind: 'adapter', millimetres: null, degrees: 0 } }],
    reply('confirm-adapter-off', {}),
  );
}

/** With the adapter changed, what the wrench is set at no longer counts: it is told and awaited anew. */
export function adapterConfirmed(job: Job, adapter: AdapterOn | null, now: Moment): Decision {
  const entry: EntryBody =
    adapter === null
      ? { kind: 'adapter-off' }
      : { kind: 'adapter-on', millimetres: adapter.millimetres, degrees: adapter.degrees };
  const taken =
    adapter === null
      ? reply('adapter-removed', {})
      : reply('adapter-taken', { length: quantity({ value: adapter.millimetres, unit: 'mm' }) });
  return does([entry], [taken, ...settingAnew(job, entry, now)]);
}

/** The setting once more where the place does not change with the entry, and so is not announced by itself. */
function settingAnew(job: Job, entry: EntryBody, now: Moment): readonly Reply[] {
  const at = passAt(job);
  return at?.part === 'set' ? setWrench(after(job, [entry], now), at.pass, now) : [];
}

/** "What do I set with a two inch crow's foot?" Nothing is changed by asking. */
export function tellSetting(job: Job, c: Command): Decision {
  const at = passAt(job);
  const adapter = adapterIn(c);
  if (!at || !isTorque(at.pass) || !adapter) return refused(reply('not-here', {}));
  const setting = settingOf(job, at.pass, adapter);
  if (setting.kind === 'refused') return told(refusalReply(setting.why, text(toolOf(job, at.pass)), setting.target));
  const lever = job.wrenches.get(at.pass.tool ?? '')?.lever ?? 0;
  return told(
    reply('setting-with', {
      length: lengthSaid(c),
      way: wayOf(adapter),
      setting: quantity(setting.set),
      gives: quantity(setting.target),
      degrees: degrees(adapter.degrees),
      lever: quantity({ value: lever, unit: 'mm' }),
      off: quantity(roundedFigure({ value: setting.roundingPercent, unit: '%' }, 1)),
    }),
  );
}

/** Another wrench for a tool of the document, from the wrenches the owner has entered. */
export function chooseWrench(job: Job, tool: string, wrench: ChosenWrench, now: Moment): Decision {
  if (job.status !== 'open') return refused(reply('not-here', {}));
  return settle(job, withWrench(job, tool, wrench, now), now);
}

export function withWrench(job: Job, tool: string, wrench: ChosenWrench, now: Moment): Decision {
  const entry: EntryBody = { kind: 'wrench-chosen', tool, wrench };
  const taken = reply('wrench-chosen', { wrench: text(wrench.say) });
  return does([entry], [taken, ...settingAnew(job, entry, now)]);
}

/** Every bolt from here on is under a wrench nobody has checked; the record says so. */
export function droppedWrench(job: Job): Decision {
  const at = passAt(job);
  if (!at || !isTorque(at.pass)) return refused(reply('not-here', {}));
  return does([{ kind: 'wrench-dropped', tool: at.pass.tool ?? '' }], [reply('wrench-dropped', {})]);
}
