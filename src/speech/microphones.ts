/** A microphone as Setup offers it. */
export type NamedMicrophone = { readonly id: string; readonly name: string };

/** What is plugged in. `named` is false while the browser keeps names and ids to itself, which ends when a microphone is allowed. */
export type MicrophonesFound = { readonly named: boolean; readonly found: readonly NamedMicrophone[] };

/** Chromium's stand-ins for the system's own choices, which are no devices of their own. */
const ALIASES: ReadonlySet<string> = new Set(['', 'default', 'communications']);

type Devices = Pick<MediaDevices, 'enumerateDevices' | 'addEventListener'>;

/** The audio inputs of this machine; none where the browser does not say. */
export async function microphonesHere(
  devices: Devices | undefined = globalThis.navigator?.mediaDevices,
): Promise<MicrophonesFound> {
  const inputs = (await devices?.enumerateDevices().catch(() => [])) ?? [];
  const microphones = inputs.filter(({ kind }) => kind === 'audioinput');
  const found = microphones
    .filter(({ deviceId, label }) => !ALIASES.has(deviceId) && label !== '')
    .map(({ deviceId, label }) => ({ id: deviceId, name: label }));
  return { named: microphones.length === 0 || microphones.some(({ label }) => label !== ''), found };
}

/** Calls back whenever one is plugged in or pulled out. */
export function onMicrophones(
  changed: () => void,
  devices: Devices | undefined = globalThis.navigator?.mediaDevices,
): void {
  devices?.addEventListener('devicechange', changed);
}
