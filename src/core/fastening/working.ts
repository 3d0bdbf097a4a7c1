import type { UnitName } from './unit';

/** One figure that went into a sum, or came out of it. `name` is the letter it has in the formula. */
export type WorkingFigure = {
  readonly name: string;
  readonly value: number;
  readonly unit: UnitName | 'ratio' | 'mm2' | 'N/mm';
};

/** A computed value with the way it was reached, so that anyone can check it on paper. */
export type Working = {
  readonly formula: FormulaId;
  readonly inputs: readonly WorkingFigure[];
  readonly result: WorkingFigure;
};

export type FormulaId = keyof typeof FORMULAS;

/**
 * What each formula is and where it comes from: letters and titles are the same in every language, words stand in braces
 * as `phrasing/terms` has them. Figures in the units their working gives; what stands after a comma is worked out first.
 */
export const FORMULAS = {
  'adapter-setting': {
    formula: 'S = T · L / (L + E · cos a)',
    source: 'US Army TM 9-254, ch. 4; US Navy training course 14315, fig. 3-43',
  },
  'adapter-torque': {
    formula: 'T = S · (L + E · cos a) / L',
    source: 'US Army TM 9-254, ch. 4',
  },
  'torque-short': { formula: 'T = K · D · F / 1000', source: '{short-form}' },
  'tension-short': { formula: 'F = 1000 · T / (K · D)', source: '{short-form}' },
  'torque-long': {
    formula: 'M = F · (0.16 · P + 0.58 · d2 · μt + (Dkm / 2) · μb) / 1000',
    source: '{vdi-2230}',
  },
  'preload-at-yield': {
    formula: 'F = 0.9 · Rp · A0 / √(1 + 3 · k²), k = 1.5 · (d2 / d0) · (P / (π · d2) + 1.155 · μ)',
    source: '{vdi-2230}',
  },
  'proof-load': { formula: 'F = Sp · As', source: 'ISO 898-1; SAE J429' },
  'turn-preload': {
    formula: 'dF = u · kb · kj / (kb + kj), u = P · {angle} / 360',
    source: '{elastic-textbook}',
  },
  'lubricant-change': { formula: 'T2 = T1 · K2 / K1', source: '{same-tension}' },
  stretch: { formula: '{stretch} = {tight} − {zero}', source: 'US Army TM 55-1905-223-24-1' },
  'leak-percent': { formula: '{leak} = 100 · ({fed} − {held}) / {fed}', source: '{common-practice}' },
  'compression-share': { formula: '{share} = 100 · {lowest} / {highest}', source: '{common-practice}' },
  'drain-and-refill': {
    formula: 'x = V · ({wanted} − {present}) / ({concentrate} − {present})',
    source: '{volume-balance}',
  },
  shim: { formula: '{new} = {old} + {measured} − {wanted}', source: '{common-practice}' },
  'compression-spread': { formula: '{spread} = 100 · ({highest} − {lowest}) / {highest}', source: '{common-practice}' },
  'compression-average': {
    formula: '{needed} = {average} · (1 − {below} / 100)',
    source: 'US Army TM 1-1500-204-23-1',
  },
  'margin-below': { formula: '{left} = {most} − {found}', source: '{limit-leaves}' },
  'margin-above': { formula: '{over} = {found} − {least}', source: '{limit-leaves}' },
  'mean-height': { formula: '{height} = (a + b) / 2', source: '{common-practice}' },
  'turn-stretch': {
    formula: '{stretch} = P · {angle} / 360 · r / (1 + r)',
    source: '{elastic-ratio}',
  },
  concentrate: {
    formula: 'c = (V · {wanted} − (V − {room}) · {present}) / {strength}',
    source: '{volume-balance}',
  },
  'freezing-point': {
    formula: 't = t1 + (t2 − t1) · ({share} − s1) / (s2 − s1)',
    source: '{between-rows}',
  },
} as const satisfies Record<string, { readonly formula: string; readonly source: string }>;

export const sourceOf = (working: Working): string => FORMULAS[working.formula].source;
export const formulaOf = (working: Working): string => FORMULAS[working.formula].formula;
