import { baseOf } from '../../fastening/quantity';
import type { LimitText, LooseEndText, PartText, TimerText, ToolText } from '../document/document';
import type { Path, Report } from '../issue';
import type { Limit, LooseEndSpec, PartSpec, TimerSpec, ToolSpec } from '../procedure';
import { readQuantity } from './quantity';

/** The entries at the top of a document, each from its hand-written form; null where a figure could not be read. */

export function buildTool(id: string, text: ToolText, at: Path, report: Report): ToolSpec | null {
  const range = text.range === undefined ? null : readQuantity(text.range, 'torque', [...at, 'range'], report);
  if (range !== null && range.window === undefined) {
    report.error('bad-quantity.range', [...at, 'range'], text.range ?? '', {});
  }
  return {
    id,
    say: text.say,
    ...(text.drive !== undefined && { drive: text.drive }),
    ...(text.socket !== undefined && { socket: text.socket }),
    ...(range?.window && { range }),
  };
}

export function buildPart(id: string, text: PartText, at: Path, report: Report): PartSpec {
  if (text.use === 'measured' && text.rule === undefined) report.error('rule-missing', at, id, {});
  return {
    id,
    say: text.say,
    quantity: text.quantity,
    use: text.use,
    ...(text.rule !== undefined && { rule: text.rule }),
    consumable: text.consumable ?? false,
  };
}

export const buildLooseEnd = (id: string, text: LooseEndText, _at: Path, _report: Report): LooseEndSpec => ({
  id,
  say: text.say,
  kind: text.kind,
  blocks: text.blocks,
});

export function buildTimer(id: string, text: TimerText, at: Path, report: Report): TimerSpec | null {
  const time = readQuantity(text.time, 'time', [...at, 'time'], report);
  const seconds = time === null ? null : baseOf(time, 'time');
  if (!seconds?.ok) return null;
  if (seconds.value <= 0) {
    report.error('out-of-range.wait', [...at, 'time'], text.time, {});
    return null;
  }
  return { id, say: text.say, minutes: seconds.value / 60 };
}

export function buildLimit(id: string, text: LimitText, at: Path, report: Report): Limit | null {
  const bound = (key: 'least' | 'most') =>
    text[key] === undefined ? undefined : readQuantity(text[key], undefined, [...at, key], report);
  const least = bound('least');
  const most = bound('most');
  if (least === null || most === null) return null;
  if (least === undefined && most === undefined) {
    report.error('limit-without-bound', at, id, {});
    return null;
  }
  if (least && most && least.unit !== most.unit) {
    report.error('wrong-unit.bounds', [...at, 'most'], text.most ?? '', {});
    return null;
  }
  if (least && most && least.value > most.value) {
    report.error('bounds-reversed.limit', at, `${least.printed}, ${most.printed}`, {});
    return null;
  }
  return { id, say: text.say, whose: text.whose, ...(least && { least }), ...(most && { most }) };
}
