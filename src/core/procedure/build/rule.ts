import { type Base, baseOf, type Dimension, millimetres, percent, type Window } from '../../fastening/quantity';
import { COOLANT_TABLES } from '../../measuring/coolant-table';
import type { FlatnessLimit } from '../../measuring/flatness';
import type { GasketGrade } from '../../measuring/gasket-grade';
import { reuseSum, stretchSum, turnSum } from '../../sums/bolts';
import { coolantSum } from '../../sums/coolant';
import { flatnessSum, metalSum, NO_FACE } from '../../sums/faces';
import { gradeSum, shimSum } from '../../sums/fits';
import { compressionSum, leakSum } from '../../sums/pressures';
import type { Rule } from '../../sums/rule';
import type { RuleText } from '../document/rules';
import type { Path, Report } from '../issue';
import { readQuantity } from './quantity';

/** A rule with its figures read; null where one could not be, which has been reported. */
export function buildRule(id: string, text: RuleText, at: Path, report: Report): Rule | null {
  const named = { id, say: text.say, whose: text.whose, figures: figuresOf(text) };
  const figures = new Figures(at, report);
  const built = ruleOf(named, text, figures);
  return figures.failed ? null : built;
}

/** What a rule goes by, as it stands in the document, in the order it is written in. */
function figuresOf(text: RuleText): readonly string[] {
  if (text.kind === 'gasket-grade')
    return text.grades.map(({ say, height, thickness }) => `${say}: ${height}, ${thickness}`);
  return Object.entries(text).flatMap(([field, value]) => {
    if (NO_FIGURE.has(field)) return [];
    if (field === 'face' && Array.isArray(value)) return [value.join(' × ')];
    return typeof value === 'string' || typeof value === 'number' ? [String(value)] : [];
  });
}

const NO_FIGURE: ReadonlySet<string> = new Set(['kind', 'for', 'say', 'whose', 'by', 'banks', 'with', 'freezes']);

type Named = Pick<Rule, 'id' | 'say' | 'whose' | 'figures'>;

function ruleOf(named: Named, text: RuleText, figures: Figures): Rule | null {
  switch (text.kind) {
    case 'compression': {
      const share = figures.base('percent', text.percent, 'ratio');
      const source = { name: text.say, source: text.whose, percent: share };
      const least = text.least === undefined ? {} : { least: figures.base('least', text.least, 'pressure') };
      const judge =
        text.by === 'share-of-highest'
          ? { ...source, kind: text.by, ...least }
          : { ...source, kind: text.by === 'spread' ? ('spread' as const) : ('below-average' as const) };
      return compressionSum(named, judge, text.banks ?? []);
    }
    case 'leak-down': {
      const fed = text.fed === undefined ? null : figures.base('fed', text.fed, 'pressure');
      return leakSum(named, figures.base('below', text.below, 'ratio'), fed, text.banks ?? []);
    }
    case 'flatness': {
      const [length, width] = (text.face ?? []).map((side, i) => figures.base(i, side, 'length', 'face'));
      const face = length === undefined || width === undefined ? null : { length, width };
      const along = figures.flatness('along', text.along, face !== null);
      const across = text.across === undefined ? along : figures.flatness('across', text.across, face !== null);
      return flatnessSum(named, along, across, face ?? NO_FACE);
    }
    case 'metal':
      return metalSum(named, figures.base('most', text.most, 'length'), text.with ?? []);
    case 'gasket-grade':
      return gradeSum(
        named,
        text.grades.map((grade, i) => gradeOf(grade, i, figures)),
      );
    case 'shims': {
      const sizes = figures.window('sizes', text.sizes, 'length');
      const range = { least: millimetres(sizes.least), most: millimetres(sizes.most) };
      const { value, window } = figures.windowed('wanted', text.wanted, 'length');
      return shimSum(named, value, { ...range, step: figures.base('step', text.step, 'length') }, window);
    }
    case 'stretch': {
      const remedy = { under: text['if-under'], over: text['if-over'] };
      return stretchSum(named, figures.window('window', text.window, 'length'), remedy);
    }
    case 'reuse': {
      const source = { name: text.say, source: text.whose };
      return text.by === 'final-torque'
        ? reuseSum(named, { ...source, kind: text.by, over: figures.base('limit', text.limit, 'torque') })
        : reuseSum(named, { ...source, kind: text.by, most: figures.base('limit', text.limit, 'length') });
    }
    case 'turn':
      return turnSum(named, figures.base('pitch', text.pitch, 'length'), text['joint-to-bolt']);
    case 'coolant': {
      const share = (key: 'concentrate' | 'present') =>
        text[key] === undefined ? null : figures.base(key, text[key], 'ratio');
      const table = COOLANT_TABLES.find(({ name }) => name === text.freezes);
      if (!table) return null;
      return coolantSum(named, {
        capacity: figures.base('capacity', text.capacity, 'volume'),
        wanted: figures.base('wanted', text.wanted, 'ratio'),
        concentrate: share('concentrate') ?? percent(100),
        present: share('present'),
        table,
      });
    }
  }
}

type GradeText = Extract<RuleText, { kind: 'gasket-grade' }>['grades'][number];

function gradeOf(grade: GradeText, index: number, figures: Figures): GasketGrade {
  const height = figures.window('height', grade.height, 'length', 'grades', index);
  const thickness = figures.base('thickness', grade.thickness, 'length', 'grades', index);
  return { grade: grade.say, least: millimetres(height.least), most: millimetres(height.most), thickness };
}

/** Reads the figures of one rule and remembers whether one was wrong. What is given back for a wrong one is not used. */
class Figures {
  failed = false;

  constructor(
    private readonly at: Path,
    private readonly report: Report,
  ) {}

  base<D extends Dimension>(key: string | number, text: string, dimension: D, ...inside: Path): Base[D] {
    return this.windowed(key, text, dimension, ...inside).value;
  }

  /** A figure with the window printed beside it, both in the base unit. */
  windowed<D extends Dimension>(key: string | number, text: string, dimension: D, ...inside: Path) {
    const place = [...this.at, ...inside, key];
    const figure = readQuantity(text, dimension, place, this.report);
    const inBase = (value: number) => baseOf({ value, unit: figure?.unit ?? 'mm' }, dimension);
    const value = inBase(figure?.value ?? 0);
    const least = inBase(figure?.window?.least ?? 0);
    const most = inBase(figure?.window?.most ?? 0);
    if (figure === null || !value.ok || !least.ok || !most.ok) {
      this.failed = true;
      // Never looked at: the rule is not built.
      return { value: 0 as Base[D], window: null };
    }
    return { value: value.value, window: figure.window ? { least: least.value, most: most.value } : null };
  }

  window(key: string, text: string, dimension: Dimension, ...inside: Path): Window {
    const { window } = this.windowed(key, text, dimension, ...inside);
    if (window !== null) return window;
    if (!this.failed) this.wrong('bad-quantity.rule-range', [...inside, key], text);
    return { least: 0, most: 0 };
  }

  /** A gap, or a share of the length measured, which needs to know how long the face is. */
  flatness(key: string, text: string, hasFace: boolean): FlatnessLimit {
    if (!/%\s*$/.test(text)) return { kind: 'fixed', most: this.base(key, text, 'length') };
    if (!hasFace) this.wrong('bad-quantity.share', [key], text);
    return { kind: 'per-span', each: this.base(key, text, 'ratio') / 100 };
  }

  private wrong(key: 'bad-quantity.rule-range' | 'bad-quantity.share', place: Path, given: string): void {
    this.failed = true;
    this.report.error(key, [...this.at, ...place], given, {});
  }
}
