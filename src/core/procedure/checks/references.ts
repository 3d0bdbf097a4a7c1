import { dimensionOf, isUnitName } from '../../fastening/unit';
import type { Built, EntryGroup } from '../build/build-procedure';
import type { StepText } from '../document/steps';
import { type FindingKey, part } from '../finding';
import type { Path, Report } from '../issue';
import { nearest } from './nearest';

const UNKNOWN = {
  tools: 'unknown-tool',
  parts: 'unknown-part',
  patterns: 'unknown-pattern',
  'loose-ends': 'unknown-loose-end',
  timers: 'unknown-timer',
  limits: 'unknown-limit',
  rules: 'unknown-rule',
} as const satisfies Record<EntryGroup, FindingKey>;

type Reference = { readonly group: EntryGroup; readonly id: string; readonly at: Path };

/** Every id a step names must be listed at the top; what is listed and never named is most likely a slip. */
export function checkReferences({ texts, written, procedure }: Built, report: Report): void {
  const named = new Set<string>();
  for (const { value, at } of texts) {
    for (const { group, id, at: place } of referencesOf(value, at)) {
      named.add(`${group} ${id}`);
      // A pattern is needed to build its step, which has already told that it is not there.
      if (written[group].has(id) || group === 'patterns') continue;
      const meant = nearest(id, [...written[group].keys()]);
      const mend = meant === null ? part('add-entry', { group }) : part('did-you-mean', { meant });
      report.error(UNKNOWN[group], place, id, { id, mend });
    }
    if (value.kind === 'measure' && value.limit !== undefined) {
      const limit = procedure.limits.get(value.limit);
      const unit = limit?.most?.unit ?? limit?.least?.unit;
      if (unit !== undefined && isUnitName(value.unit) && dimensionOf(unit) !== dimensionOf(value.unit))
        report.error('wrong-unit.limit', [...at, 'limit'], value.limit, { limit: unit, reading: value.unit });
    }
  }
  for (const group of Object.keys(written).filter(isGroup))
    for (const [id, at] of written[group])
      if (!named.has(`${group} ${id}`) && !(group === 'tools' && procedure.tools.get(id)?.range))
        report.warning('never-used', at, id, { id });
}

const isGroup = (key: string): key is EntryGroup => key in UNKNOWN;

function referencesOf(text: StepText, at: Path): readonly Reference[] {
  const list = (group: EntryGroup, key: string, ids: readonly string[] | undefined): readonly Reference[] =>
    (ids ?? []).map((id, index) => ({ group, id, at: [...at, key, index] }));
  const one = (group: EntryGroup, place: Path, id: string | undefined): readonly Reference[] =>
    id === undefined ? [] : [{ group, id, at: place }];
  return [
    ...list('tools', 'tools', text.tools),
    ...list('parts', 'parts', text.parts),
    ...list('loose-ends', 'opens', text.opens),
    ...list('loose-ends', 'closes', text.closes),
    ...list('timers', 'starts-timers', text['starts-timers']),
    ...list('timers', 'needs-timers', text['needs-timers']),
    ...(text.kind === 'wait' ? one('timers', [...at, 'timer'], text.timer) : []),
    ...(text.kind === 'measure' ? one('limits', [...at, 'limit'], text.limit) : []),
    ...(text.kind === 'measure' || text.kind === 'fill' ? list('rules', 'works-out', text['works-out']) : []),
    ...(text.kind === 'tighten' || text.kind === 'slacken'
      ? [
          ...one('patterns', [...at, 'pattern'], text.pattern),
          ...one('tools', [...at, 'tool'], text.tool),
          ...text.passes.flatMap((pass, index) => [
            ...one('tools', [...at, 'passes', index, 'tool'], pass.tool),
            ...one('timers', [...at, 'passes', index, 'wait'], pass.wait),
          ]),
        ]
      : []),
  ];
}
