/** Keys of the strip that shows what the ear does and hears. */
export const EAR_WORDS = {
  'ear-label': [],
  'ear-off': [],
  'ear-loading': [],
  'ear-listening': [],
  'ear-speaking': [],
  'ear-too-loud': [],
  'ear-shut': [],
  'ear-waiting': [],
  'ear-failed': [],
  'heard-sure': [],
  'heard-fair': [],
  'heard-rejected': [],
  'did-nothing': [],
} as const satisfies Record<string, readonly string[]>;
