import type { Say, ScreenWords } from './words';

const SLOT = /\{([a-z]+)\}/g;

/** A speaker of these words: a text by its key, its slots filled in. */
export function sayer(words: ScreenWords): Say {
  return (key, ...slots) => {
    const values: Readonly<Record<string, string | number>> = slots[0] ?? {};
    // Blank for the moment before the rest of the texts has come.
    return (words[key] ?? '').replace(SLOT, (whole, slot: string) => String(values[slot] ?? whole));
  };
}
