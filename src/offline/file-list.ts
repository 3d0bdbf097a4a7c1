/**
 * `shell` is what the Bench needs to be worked by hand, `ear` and `voice` what it needs to listen and to speak. `choice`
 * is fetched only by those who choose another recogniser, and kept from then on.
 */
export type Part = 'shell' | 'ear' | 'voice' | 'choice';

/** One file of a build: its path under the app's address, what it must be to the byte, and how long it is. */
export type OfflineFile = {
  readonly path: string;
  readonly sha256: string;
  readonly bytes: number;
  readonly part: Part;
};

/** Without these the app does not count as ready for a day without a network. */
export const NEEDED: readonly Part[] = ['shell', 'ear', 'voice'];

const PARTS: readonly (readonly [RegExp, Part])[] = [
  [/^vosk|\/vosk/, 'choice'],
  [/^model\/|^assets\/(ear-worker|capture|rnnoise|soundswallower)/, 'ear'],
  [/^assets\/flite/, 'voice'],
];

/** By name, as the build gives it. What is not known belongs to the shell: rather kept too early than too late. */
export const partOf = (path: string): Part => PARTS.find(([pattern]) => pattern.test(path))?.[1] ?? 'shell';

/** The path under `scope` that an address asks for, its query left aside; null for an address outside. */
export function pathUnder(scope: string, address: string): string | null {
  const { origin, pathname } = new URL(address);
  const plain = `${origin}${pathname}`;
  if (!plain.startsWith(scope)) return null;
  const path = plain.slice(scope.length);
  return path === '' ? 'index.html' : path;
}
