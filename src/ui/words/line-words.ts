/** Keys of the ear's line under the screens other than the Bench. */
export const LINE_WORDS = {
  'line-hint': [],
  'line-not-kept': [],
  'line-to-bench': ['place'],
} as const satisfies Record<string, readonly string[]>;
