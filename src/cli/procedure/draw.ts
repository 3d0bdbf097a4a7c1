import { type DrawnOrder, patternSvg } from '../../core/drawing/pattern-svg';
import type { Procedure } from '../../core/procedure/procedure';
import { EXIT } from './check';
import type { ProcedureIo } from './io';
import { noSuch, withProcedure } from './read';

export const DRAW_USAGE = 'draw FILE PATTERN   prints a pattern as SVG: outline, landmarks, numbers and order';

export const draw = (argv: readonly string[], io: ProcedureIo): Promise<number> =>
  withProcedure(argv, 2, DRAW_USAGE, io, (procedure, [id = '']) => {
    const pattern = procedure.patterns.get(id);
    if (!pattern) return noSuch('pattern', id, procedure.patterns.keys(), io);
    const words = {
      title: `${procedure.title}: ${pattern.say}${procedure.demonstration ? ' (demonstration)' : ''}`,
      viewedFrom: `View: ${pattern.viewedFrom}.`,
      order: 'Order:',
      generated: 'This order was worked out by rule. It is not the maker’s.',
    };
    io.print(patternSvg(pattern, orderIn(procedure, id), words).trimEnd());
    return EXIT.fine;
  });

/** The order of the tightening pass over most fasteners: what a manual prints beside the picture. */
function orderIn({ phases }: Procedure, pattern: string): DrawnOrder | null {
  const passes = phases
    .flatMap(({ steps }) => steps)
    .flatMap((step) => (step.kind === 'tighten' && step.pattern === pattern ? step.passes : []));
  const most = Math.max(0, ...passes.map(({ order }) => order.length));
  const widest = passes.find(({ order }) => order.length === most && most > 0);
  return widest ? { numbers: widest.order, generated: widest.generated === true } : null;
}
