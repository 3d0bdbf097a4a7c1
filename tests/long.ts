/** Set by `npm run soak`: properties are tried as often as there is time for, instead of as often as a build has time for. */
const IS_LONG = process.env.WRENCHSIDE_LONG === '1';

/** How often a property is tried: `usual` on every build, `long` when soaking. */
export const tries = (usual: number, long: number): number => (IS_LONG ? long : usual);

/** What random tests begin from, so that a run can be had again. Another one with WRENCHSIDE_SEED. */
export const SEED = Number(process.env.WRENCHSIDE_SEED ?? 326);
