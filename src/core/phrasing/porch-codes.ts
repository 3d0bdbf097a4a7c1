/** What is answered where another screen is asked for, and where no job is open; and the slots of each. */
export const PORCH_CODES = {
  'show-bench': [],
  'show-record': [],
  'show-jobs': [],
  'show-procedures': [],
  'show-setup': [],
  'show-card': [],
  'confirm-begin': ['title'],
  'confirm-open': ['title'],
  'no-job-open': [],
  'could-not-open': [],
  // Only shown: where the job stands, under the other screens
  'shown-pass-only': ['number', 'total'],
  'shown-pass-bolt': ['number', 'total', 'bolt'],
} as const satisfies Record<string, readonly string[]>;
