/**
 * `shell` is what the Bench needs to be worked by hand, `ear` and `voice` what it needs to listen and to speak, with the
 * acoustic model of the language it is worked in. `choice` is fetched only by those who choose another recogniser. The
 * models of other languages, and `choice`, are kept from when they are first used.
 */
export type Part = 'shell' | 'ear' | 'voice' | 'choice' | Model;
type Model = `model-${string}`;

/** The part that an acoustic model is, by its folder. */
export const modelPart = (folder: string): Model => `model-${folder}`;
const isModel = (part: Part): part is Model => part.startsWith('model-');

/** One file of a build: its path under the app's address, what it must be to the byte, and how long it is. */
export type OfflineFile = {
  readonly path: string;
  readonly sha256: string;
  readonly bytes: number;
  readonly part: Part;
};

/** Without these, and a model, the app does not count as ready for a day without a network. */
export const NEEDED: readonly Part[] = ['shell', 'ear', 'voice'];

/** What a machine needs again that has kept files of these paths: the models of its languages too. */
export const neededAgain = (kept: readonly string[]): readonly Part[] => [
  ...NEEDED,
  ...new Set(kept.map(partOf).filter(isModel)),
];

const PARTS: readonly (readonly [RegExp, Part])[] = [
  [/^vosk|\/vosk/, 'choice'],
  [/^assets\/(ear-worker|capture|rnnoise|soundswallower)/, 'ear'],
  [/^assets\/flite/, 'voice'],
];

/** By name, as the build gives it. What is not known belongs to the shell: rather kept too early than too late. */
export const partOf = (path: string): Part => {
  const model = /^model\/([\w-]+)\//.exec(path)?.[1];
  return model === undefined ? (PARTS.find(([pattern]) => pattern.test(path))?.[1] ?? 'shell') : modelPart(model);
};

/** The path under `scope` that an address asks for, its query left aside; null for an address outside. */
export function pathUnder(scope: string, address: string): string | null {
  const { origin, pathname } = new URL(address);
  const plain = `${origin}${pathname}`;
  if (!plain.startsWith(scope)) return null;
  const path = plain.slice(scope.length);
  return path === '' ? 'index.html' : path;
}
