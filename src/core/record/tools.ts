import { doubtsAbout, type IsoDay, type WrenchDoubt } from '../fastening/wrench';
import { type ChosenWrench, wrenchOf } from '../job/chosen-wrench';
import type { Entry } from '../job/entry';
import { type Plan, passIn } from '../job/plan';
import { isTorque } from '../job/setting';
import type { ToolSpec } from '../procedure/procedure';

/** A wrench that stood for a tool of the document, as Setup last described it. */
export type WrenchRecord = {
  readonly wrench: ChosenWrench;
  readonly chosen: Entry;
  /** The last fastener or setting that was told while it was in hand; null where it was not used. */
  readonly lastUsed: Entry | null;
  /** The fall that nothing has settled: it was not chosen again since. */
  readonly dropped: Entry | null;
  /** What spoke against it on the day it was last used, or chosen where it was not used. */
  readonly doubts: readonly WrenchDoubt['code'][];
};

/** A tool the document calls for, and every wrench that stood for it, in the order they were taken up. */
export type ToolRecord = {
  readonly tool: ToolSpec;
  readonly wrenches: readonly WrenchRecord[];
  /** The last fall of it while nobody had said which wrench it was. */
  readonly droppedUnnamed: Entry | null;
};

type InHand = Omit<WrenchRecord, 'doubts'>;

/** All tools of the document in its order, from the entries that stand. */
export function toolsOf(plan: Plan, live: readonly Entry[]): readonly ToolRecord[] {
  const known = new Map<string, readonly InHand[]>();
  const unnamed = new Map<string, Entry>();
  const change = (tool: string | undefined, to: (one: InHand) => InHand): void => {
    const all = tool === undefined ? undefined : known.get(tool);
    const last = all?.at(-1);
    if (tool !== undefined && all && last) known.set(tool, [...all.slice(0, -1), to(last)]);
  };
  for (const e of live) {
    switch (e.kind) {
      case 'wrench-chosen': {
        const before = known.get(e.tool) ?? [];
        const isAgain = before.at(-1)?.wrench.id === e.wrench.id;
        if (isAgain) change(e.tool, (one) => ({ ...one, wrench: e.wrench, dropped: null }));
        else known.set(e.tool, [...before, { wrench: e.wrench, chosen: e, lastUsed: null, dropped: null }]);
        break;
      }
      case 'wrench-dropped':
        if (known.has(e.tool)) change(e.tool, (one) => ({ ...one, dropped: e }));
        else unnamed.set(e.tool, e);
        break;
      case 'setting-confirmed':
      case 'bolt-done':
        change(toolIn(plan, e), (one) => ({ ...one, lastUsed: e }));
        break;
      default:
        break;
    }
  }
  return [...plan.procedure.tools.values()].map((tool) => ({
    tool,
    wrenches: (known.get(tool.id) ?? []).map((one) => ({ ...one, doubts: doubtsOf(one) })),
    droppedUnnamed: unnamed.get(tool.id) ?? null,
  }));
}

const doubtsOf = ({ wrench, chosen, lastUsed, dropped }: InHand): readonly WrenchDoubt['code'][] =>
  doubtsAbout(wrenchOf(wrench, dropped !== null), dayOf((lastUsed ?? chosen).at)).map(({ code }) => code);

const dayOf = (at: number): IsoDay => new Date(at).toISOString().slice(0, 10);

function toolIn(plan: Plan, at: { readonly step: string; readonly pass: string }): string | undefined {
  const pass = passIn(plan, at.step, at.pass);
  return isTorque(pass) ? pass.tool : undefined;
}
