/** Keys of Setup. */
export const SETUP_WORDS = {} as const satisfies Record<string, readonly string[]>;
