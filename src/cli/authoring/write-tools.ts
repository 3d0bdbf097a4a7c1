import { convert } from '../../core/fastening/quantity';
import { symbolOf, type UnitName } from '../../core/fastening/unit';
import type { Draft } from './draft';
import { figureScalar } from './scalar';

export const usesTurnTool = ({ passes }: Draft): boolean => passes.some(({ kind }) => kind === 'angle');

/** A torque wrench where a pass needs one, and something to turn an angle with. */
export function toolLines(draft: Draft): readonly string[] {
  const range = draft.wrench ?? needed(draft);
  const wrench =
    range === null
      ? []
      : [
          ...(draft.wrench === null
            ? ['  # This range is only what the passes need: write the one on your own wrench, and its socket.']
            : ['  # The part of the scale that may be used; the checker holds every torque against it.']),
          `  torque-wrench: { say: torque wrench, range: ${figureScalar(range)} }`,
        ];
  const turn = usesTurnTool(draft) ? ['  turn-tool: { say: breaker bar }'] : [];
  const none = [...wrench, ...turn].length === 0;
  return ['tools:', ...(none ? ['  {}'] : [...wrench, ...turn])];
}

/** From the lowest to the highest torque of the passes, in the unit of the first, opened to whole graduations. */
function needed({ passes }: Draft): string | null {
  const torques = passes.flatMap((pass) => (pass.kind === 'torque' || pass.kind === 'repeat' ? [pass] : []));
  const unit = torques[0]?.unit;
  if (unit === undefined) return null;
  const values = torques.flatMap((pass) => inUnit(pass, unit));
  const step = 10 ** Math.floor(Math.log10(Math.min(...values)));
  const least = Math.floor(Math.min(...values) / step) * step;
  const most = Math.ceil(Math.max(...values) / step) * step;
  const ends = [least, most > least ? most : least + step].map((value) => Number(value.toPrecision(12)));
  return `${ends.join('–')} ${symbolOf(unit)}`;
}

function inUnit(pass: { readonly value: number; readonly unit: UnitName }, unit: UnitName): readonly number[] {
  const value = convert(pass, unit);
  return value.ok ? [value.value] : [];
}
