import type { Printed, Window } from '../fastening/quantity';
import type { AngleTurn, Pass, Procedure, ToolSpec } from '../procedure/procedure';

/** One pass as it is set: with the figure the manual prints, never one worked out here. */
export type PassSetting = {
  readonly say: string;
  readonly order: readonly number[];
  /** The order was worked out by rule, not printed by the maker. */
  readonly generated: boolean;
  readonly tool: ToolSpec | null;
  readonly lubrication: string | null;
  readonly setting: Setting;
};

export type Setting =
  | { readonly kind: 'torque' | 'repeat'; readonly target: Printed; readonly window: Window | null }
  | AngleTurn
  | { readonly kind: 'slacken'; readonly degrees: number }
  | { readonly kind: 'wait'; readonly timer: string; readonly minutes: number };

export const settingsOf = (procedure: Procedure, passes: readonly Pass[]): readonly PassSetting[] =>
  passes.map((pass) => ({
    say: pass.say,
    order: pass.order,
    generated: pass.generated === true,
    tool: (pass.tool === undefined ? undefined : procedure.tools.get(pass.tool)) ?? null,
    // A wait or a slackening needs no oil on the threads.
    lubrication: (pass.kind === 'wait' || pass.kind === 'slacken' ? undefined : pass.lubrication) ?? null,
    setting: settingOf(procedure, pass),
  }));

function settingOf(procedure: Procedure, pass: Pass): Setting {
  switch (pass.kind) {
    case 'torque':
    case 'repeat':
      return { kind: pass.kind, target: pass.target, window: pass.window ?? null };
    case 'angle':
      return {
        kind: 'angle',
        degrees: pass.degrees,
        window: pass.window,
        swings: pass.swings,
        ...(pass.floor && { floor: pass.floor }),
      };
    case 'slacken':
      return { kind: 'slacken', degrees: pass.degrees };
    case 'wait': {
      const timer = procedure.timers.get(pass.timer);
      return { kind: 'wait', timer: timer?.say ?? pass.timer, minutes: timer?.minutes ?? 0 };
    }
  }
}
