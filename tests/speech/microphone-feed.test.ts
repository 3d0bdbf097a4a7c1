import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { Listeners } from '../../src/core/listeners';
import type { RecogniserEvent } from '../../src/core/ports';
import { microphoneFeed } from '../../src/speech/microphone-feed';
import { microphonesHere } from '../../src/speech/microphones';

class FakeTrack {
  onended: (() => void) | null = null;
  stopped = false;
  constructor(readonly label: string) {}
  readonly getSettings = () => ({});
  readonly stop = () => {
    this.stopped = true;
  };
}

/** Not a DOMException in every browser, so not here either. */
const gone = Object.assign(new Error('no such device'), { name: 'OverconstrainedError' });
const none = new DOMException('none', 'NotFoundError');

/** The browser's devices, as a test plugs them in. The first is what the machine itself would choose. */
class FakeDevices extends EventTarget {
  plugged: readonly string[] = [];
  readonly given: FakeTrack[] = [];

  getUserMedia({ audio }: { audio: { deviceId?: { exact: string } } }) {
    const wanted = audio.deviceId?.exact;
    if (this.plugged.length === 0) return Promise.reject(none);
    if (wanted !== undefined && !this.plugged.includes(wanted)) return Promise.reject(gone);
    const track = new FakeTrack(wanted ?? this.plugged[0] ?? '');
    this.given.push(track);
    return Promise.resolve({ getAudioTracks: () => [track] });
  }

  enumerateDevices() {
    return Promise.resolve(this.plugged.map((deviceId) => ({ deviceId, kind: 'audioinput', label: deviceId })));
  }

  plug(...plugged: string[]): void {
    this.plugged = plugged;
    this.dispatchEvent(new Event('devicechange'));
  }
}

const settled = () => new Promise((resolve) => setTimeout(resolve, 5));

let devices: FakeDevices;
beforeEach(() => {
  devices = new FakeDevices();
  vi.stubGlobal('navigator', { mediaDevices: devices });
  vi.stubGlobal('document', Object.assign(new EventTarget(), { visibilityState: 'visible' }));
  vi.stubGlobal(
    'AudioWorkletNode',
    class {
      port = { postMessage: () => undefined };
      disconnect = () => undefined;
    },
  );
});
afterEach(() => vi.unstubAllGlobals());

function feeding(wanted: string | null) {
  const context = Object.assign(new EventTarget(), {
    state: 'running',
    audioWorklet: { addModule: () => Promise.resolve() },
    createMediaStreamSource: () => ({ connect: () => undefined, disconnect: () => undefined }),
  }) as unknown as AudioContext;
  const choice = { deviceId: wanted };
  const told: RecogniserEvent[] = [];
  const stoodIn: boolean[] = [];
  const listeners = new Listeners<RecogniserEvent>();
  listeners.add((event) => told.push(event));
  const feed = microphoneFeed(
    context,
    {
      choice: () => ({ ...choice, echoCancellation: false }),
      opened: (standsIn) => stoodIn.push(standsIn),
    },
    listeners,
    () => void feed.open(),
  );
  const open = () => devices.given.filter(({ stopped }) => !stopped).map(({ label }) => label);
  return { feed, choice, told, stoodIn, open };
}

describe('the microphone that was chosen', () => {
  test('is the one that is opened, and no other', async () => {
    devices.plugged = ['tablet', 'headset'];
    const { feed, open, stoodIn } = feeding('headset');
    await feed.open();
    expect(open()).toEqual(['headset']);
    expect(stoodIn).toEqual([false]);
  });

  test("is gone: the machine's own choice stands in, and this is told as no fault", async () => {
    devices.plugged = ['tablet'];
    const { feed, open, stoodIn, told } = feeding('headset');
    expect(await feed.open()).not.toBeNull();
    expect(open()).toEqual(['tablet']);
    expect(stoodIn).toEqual([true]);
    expect(told).toEqual([]);
  });

  test('is plugged in again: it is opened in the place of what stood in for it', async () => {
    devices.plugged = ['tablet'];
    const { feed, open, stoodIn } = feeding('headset');
    await feed.open();
    devices.plug('tablet', 'another');
    await settled();
    expect(open()).toEqual(['tablet']);
    devices.plug('tablet', 'headset');
    await settled();
    expect(open()).toEqual(['headset']);
    expect(stoodIn).toEqual([true, false]);
  });

  test('is pulled out while it listens: that is told, and another is opened', async () => {
    devices.plugged = ['tablet', 'headset'];
    const { feed, open, told, stoodIn } = feeding('headset');
    await feed.open();
    devices.given[0]?.onended?.();
    devices.plug('tablet');
    await settled();
    expect(told).toMatchObject([{ type: 'failed', code: 'microphone-lost' }]);
    expect(open()).toEqual(['tablet']);
    expect(stoodIn).toEqual([false, true]);
  });

  test('is another one from now on: the old one is closed and the new one opened', async () => {
    devices.plugged = ['tablet', 'headset'];
    const { feed, choice, open } = feeding(null);
    await feed.open();
    choice.deviceId = 'headset';
    await feed.reopen();
    await settled();
    expect(open()).toEqual(['headset']);
  });

  test('is changed while the first is still being opened: only the last one stays', async () => {
    devices.plugged = ['tablet', 'headset'];
    const { feed, choice, open } = feeding(null);
    const opening = feed.open();
    choice.deviceId = 'headset';
    await feed.reopen();
    await opening;
    await settled();
    expect(open()).toEqual(['headset']);
  });

  test('is none at all, where nothing is plugged in: that is a fault', async () => {
    const { feed, told, stoodIn } = feeding('headset');
    expect(await feed.open()).toBeNull();
    expect(told).toMatchObject([{ type: 'failed', code: 'microphone-missing' }]);
    expect(stoodIn).toEqual([]);
  });

  test('is not opened any more once the ear is closed', async () => {
    devices.plugged = ['tablet'];
    const { feed, open } = feeding(null);
    const opening = feed.open();
    feed.close();
    await opening;
    await feed.reopen();
    expect(open()).toEqual([]);
  });
});

describe('the list of microphones', () => {
  const listed = (...inputs: readonly (readonly [string, string, string])[]) => ({
    enumerateDevices: async () =>
      inputs.map(([kind, deviceId, label]) => ({ kind, deviceId, label })) as unknown as MediaDeviceInfo[],
    addEventListener: () => undefined,
  });

  test("has what listens, without the names the browser gives to the machine's own choice", async () => {
    const devices = listed(
      ['audioinput', 'default', 'Default - headset'],
      ['audioinput', 'communications', 'Communications - headset'],
      ['audioinput', 'a1', 'headset'],
      ['audiooutput', 'b2', 'loudspeaker'],
      ['videoinput', 'c3', 'camera'],
    );
    expect(await microphonesHere(devices)).toEqual({ named: true, found: [{ id: 'a1', name: 'headset' }] });
  });

  test('says that names are kept back before one was allowed', async () => {
    expect(await microphonesHere(listed(['audioinput', '', '']))).toEqual({ named: false, found: [] });
  });

  test('is empty where none is plugged in, and where the browser does not say', async () => {
    const refusing = { ...listed(), enumerateDevices: () => Promise.reject(new Error('no')) };
    for (const devices of [listed(), refusing, undefined])
      expect(await microphonesHere(devices)).toEqual({ named: true, found: [] });
  });
});
