import type { Entry } from '../job/entry';

/**
 * A fold over a log that grows. It goes on where it stopped as long as the log begins with what it has seen; where an
 * entry before was taken out, or it is another log, it begins anew. `step` may change the state it is given.
 */
export function runningFold<S>(start: () => S, step: (state: S, entry: Entry) => S): (entries: readonly Entry[]) => S {
  let state = start();
  let seen = 0;
  let last: Entry | undefined;
  return (entries) => {
    // Entries are never put in between, so one that is still in its place has the same ones before it.
    if (entries[seen - 1] !== last) {
      state = start();
      seen = 0;
    }
    for (const entry of entries.slice(seen)) state = step(state, entry);
    seen = entries.length;
    last = entries.at(-1);
    return state;
  };
}
