/** The version of the entries written now. Raising it needs a step in `upgrade.ts` and a kept log of the old version. */
export const LOG_VERSION = 1;
