/** Keys of the sheets on which sentences are tapped and numbers keyed in. */
export const TAP_WORDS = {
  'tap-title': [],
  'tap-back': [],
  'tap-on': [],
  'pad-label': [],
  'pad-point-label': [],
  'pad-rub': [],
} as const satisfies Record<string, readonly string[]>;
