import { describe, expect, test } from 'vitest';
import { assemblyTorque, type Bearing, preloadAtYield } from '../../../src/core/fastening/long-torque';
import { megapascals, millimetres, newtons } from '../../../src/core/fastening/quantity';
import { metricThread, type Thread } from '../../../src/core/fastening/thread';

const thread = (d: number, p: number): Thread => {
  const made = metricThread(millimetres(d), millimetres(p));
  if (!made.ok) throw new Error(`no thread M${d}x${p}`);
  return made.value;
};
const ring = (outer: number, hole: number): Bearing => ({ outer: millimetres(outer), hole: millimetres(hole) });

/** Hexagon bearing faces over holes of ISO 273, medium. */
const BEARINGS: Readonly<Record<string, Bearing>> = {
  M8x1: ring(11.6, 9),
  'M10x1.25': ring(14.6, 11),
  'M12x1.25': ring(16.6, 13.5),
  'M14x1.5': ring(19.6, 15.5),
};
const YIELDS = [640, 940, 1100] as const;

/** VDI 2230, edition 2001, guide values for fine threads: preload in kN and torque in N·m for 8.8, 10.9 and 12.9. */
const VDI_TABLE = [
  ['M8x1', 0.1, [20.7, 30.4, 35.6], [22.8, 33.5, 39.2]],
  ['M8x1', 0.12, [20.2, 29.7, 34.7], [26.1, 38.3, 44.9]],
  ['M8x1', 0.14, [19.7, 28.9, 33.9], [29.2, 42.8, 50.1]],
  ['M10x1.25', 0.1, [32.4, 47.5, 55.6], [44, 65, 76]],
  ['M10x1.25', 0.12, [31.6, 46.4, 54.3], [51, 75, 87]],
  ['M10x1.25', 0.14, [30.8, 45.2, 52.9], [57, 83, 98]],
  ['M12x1.25', 0.1, [49.1, 72.1, 84.4], [79, 116, 135]],
  ['M12x1.25', 0.12, [48.0, 70.5, 82.5], [90, 133, 155]],
  ['M12x1.25', 0.14, [46.8, 68.7, 80.4], [101, 149, 174]],
  ['M14x1.5', 0.1, [66.4, 97.5, 114.1], [124, 182, 213]],
  ['M14x1.5', 0.12, [64.8, 95.2, 111.4], [142, 209, 244]],
  ['M14x1.5', 0.14, [63.2, 92.9, 108.7], [159, 234, 274]],
] as const;

const cells = VDI_TABLE.flatMap(([name, mu, preloads, torques]) =>
  YIELDS.map((yields, i) => ({ name, mu, yields, preload: preloads[i] ?? 0, torque: torques[i] ?? 0 })),
);

describe('VDI 2230 (2001) fine-thread table: 36 preloads and 36 torques', () => {
  const threadOf = (name: string): Thread => {
    const [d = 0, p = 0] = name.slice(1).split('x').map(Number);
    return thread(d, p);
  };

  test('the table is whole', () => expect(cells).toHaveLength(36));

  test.each(cells)('$name, friction $mu, Rp $yields: $preload kN within 0.5 %', ({ name, mu, yields, preload }) => {
    const result = preloadAtYield(threadOf(name), megapascals(yields), mu);
    expect(Math.abs((result.ok ? result.value.preload : 0) / (1000 * preload) - 1)).toBeLessThan(0.005);
  });

  test.each(cells)('$name, friction $mu, Rp $yields: $torque N·m within 1.5 %', ({ name, mu, preload, torque }) => {
    const bearing = BEARINGS[name] ?? ring(0, 0);
    const result = assemblyTorque(newtons(1000 * preload), threadOf(name), bearing, { thread: mu, bearing: mu });
    expect(Math.abs((result.ok ? result.value.torque : 0) / torque - 1)).toBeLessThan(0.015);
  });
});

describe('M10x1.25 of class 8.8 at friction 0.12, term by term', () => {
  const torqueAt = (threadFriction: number, headFriction: number): number => {
    const friction = { thread: threadFriction, bearing: headFriction };
    const result = assemblyTorque(newtons(31_600), thread(10, 1.25), ring(14.6, 11), friction);
    return result.ok ? result.value.torque : Number.NaN;
  };

  test('31.6 kN need 50.8 N·m (derived; printed 51)', () => {
    expect(torqueAt(0.12, 0.12)).toBeCloseTo(50.8, 1);
  });

  test('pitch, thread and head take 12.4, 39.8 and 47.8 % (derived)', () => {
    const none = 1e-9;
    const pitch = torqueAt(none, none);
    const whole = torqueAt(0.12, 0.12);
    expect((100 * pitch) / whole).toBeCloseTo(12.4, 1);
    expect((100 * (torqueAt(0.12, none) - pitch)) / whole).toBeCloseTo(39.8, 1);
    expect((100 * (torqueAt(none, 0.12) - pitch)) / whole).toBeCloseTo(47.8, 1);
  });

  test('the exact screw formula of Motosh gives 50.67 N·m, a quarter of a percent away (derived)', () => {
    const [pitch, d2, ringRadius] = [1.25, 10 - 0.649519 * 1.25, 6.4];
    const arm = pitch / (2 * Math.PI) + (0.12 * (d2 / 2)) / Math.cos(Math.PI / 6) + 0.12 * ringRadius;
    expect((31_600 * arm) / 1000).toBeCloseTo(50.67, 2);
    expect(Math.abs(torqueAt(0.12, 0.12) / ((31_600 * arm) / 1000) - 1)).toBeLessThan(0.004);
  });
});

test('more friction leaves less preload and needs more torque for the same preload', () => {
  const mus = [0.08, 0.1, 0.12, 0.14, 0.16, 0.2];
  const preloads = mus.map((mu) => {
    const result = preloadAtYield(thread(10, 1.25), megapascals(640), mu);
    return result.ok ? result.value.preload : Number.NaN;
  });
  expect(preloads).toEqual(preloads.toSorted((a, b) => b - a));
  const torques = mus.map((mu) => {
    const result = assemblyTorque(newtons(30_000), thread(10, 1.25), ring(14.6, 11), { thread: mu, bearing: mu });
    return result.ok ? result.value.torque : Number.NaN;
  });
  expect(torques).toEqual(torques.toSorted((a, b) => a - b));
});

test('friction of nothing is refused rather than taken as grease', () => {
  expect(preloadAtYield(thread(10, 1.25), megapascals(640), 0)).toEqual({
    ok: false,
    error: { code: 'not-positive', name: 'μ', given: 0 },
  });
  const result = assemblyTorque(newtons(30_000), thread(10, 1.25), ring(14.6, 11), { thread: 0.12, bearing: 0 });
  expect(result).toEqual({ ok: false, error: { code: 'not-positive', name: 'μb', given: 0 } });
});
