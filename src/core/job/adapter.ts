import { degrees as angle, millimetres as length } from '../fastening/quantity';
import type { Adapter } from '../fastening/wrench-setting';
import { degrees, type Reply, replies, reply } from '../phrasing/reply';

/** What is on the wrench: how long, and how many degrees it stands off straight ahead. */
export type AdapterOn = { readonly millimetres: number; readonly degrees: number };

export const adapterOf = (on: AdapterOn | null): Adapter =>
  on === null ? { kind: 'concentric' } : { kind: 'offset', length: length(on.millimetres), angle: angle(on.degrees) };

export const isSameAdapter = (a: AdapterOn, b: AdapterOn): boolean =>
  a.millimetres === b.millimetres && a.degrees === b.degrees;

/** Which way it stands, in words. */
export const wayOf = ({ degrees: off }: AdapterOn): Reply['slots'][string] =>
  replies([off === 0 ? reply('way-ahead', {}) : reply('way-turned', { degrees: degrees(off) })]);
