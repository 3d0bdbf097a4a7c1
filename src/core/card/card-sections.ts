import type { Printed } from '../fastening/quantity';
import type { Limit, PartSpec, ToolSpec } from '../procedure/procedure';
import { type CardKey, type CardWords, say } from './card-words';
import type { JobCard, StepSettings } from './job-card';
import type { PassSetting, Setting } from './pass-setting';

/** A card laid out as tables, the same for text, screen and paper. */
export type CardSection = {
  readonly title: string;
  readonly groups: readonly { readonly title: string; readonly rows: readonly (readonly string[])[] }[];
  /** Rows get a box to be ticked off. */
  readonly tick: boolean;
  /** Rows get room to write in, on a page of their own: it goes to the bench. */
  readonly write: boolean;
};

/** The sections of a card that have something in them, in the order they are needed. */
export function cardSections(card: JobCard, words: CardWords): readonly CardSection[] {
  const { parts } = card;
  const one = (key: CardKey, tick: boolean, rows: readonly (readonly string[])[]): CardSection => ({
    title: say(words, key),
    groups: [{ title: '', rows }],
    tick,
    write: false,
  });
  const partRows = (some: readonly PartSpec[]) => some.map((part) => [`${part.quantity} ×`, part.say, part.rule ?? '']);
  const sections: readonly CardSection[] = [
    {
      title: say(words, 'tools'),
      groups: card.tools.map(({ phase, tools }) => ({ title: phase, rows: tools.map((tool) => toolRow(tool, words)) })),
      tick: true,
      write: false,
    },
    {
      title: say(words, 'settings'),
      groups: card.settings.map((step) => ({
        title: settingsTitle(step, words),
        rows: step.passes.map((pass) => passRow(pass, words)),
      })),
      tick: false,
      write: false,
    },
    one('single-use', true, partRows(parts.singleUse)),
    one('consumables', true, partRows(parts.consumables)),
    one('measured', true, partRows(parts.measured)),
    one('reused', true, partRows(parts.reused)),
    one(
      'fills',
      false,
      card.fills.map(({ what, amount }) => [what, printed(amount)]),
    ),
    {
      title: say(words, 'stowage'),
      groups: card.stowage.map(({ where, items }) => ({
        title: where,
        rows: items.map(({ what, quantity }) => [`${quantity} ×`, what]),
      })),
      tick: true,
      write: true,
    },
    one(
      'timers',
      false,
      card.timers.map((timer) => [timer.say, timeWords(timer.minutes, words)]),
    ),
    one(
      'limits',
      false,
      card.limits.map((limit) => limitRow(limit, words)),
    ),
    one(
      'rules',
      false,
      card.rules.map((rule) => [rule.say, rule.figures.join(', '), say(words, 'whose', { whose: rule.whose })]),
    ),
  ];
  return sections
    .map((section) => ({ ...section, groups: section.groups.filter(({ rows }) => rows.length > 0).map(withoutGaps) }))
    .filter(({ groups }) => groups.length > 0);
}

/** A group without the columns that have nothing in any row. */
function withoutGaps<G extends { readonly rows: readonly (readonly string[])[] }>(group: G): G {
  const filled = (group.rows[0] ?? []).map((_cell, column) => group.rows.some((row) => row[column] !== ''));
  return { ...group, rows: group.rows.map((row) => row.filter((_cell, column) => filled[column])) };
}

function toolRow({ say: name, drive, socket, range }: ToolSpec, words: CardWords): readonly string[] {
  return [
    name,
    drive === undefined ? '' : say(words, 'drive', { drive }),
    socket === undefined ? '' : say(words, 'socket', { socket }),
    range === undefined ? '' : say(words, 'range', { range: range.printed }),
  ];
}

function settingsTitle({ phase, pattern, onlyIf }: StepSettings, words: CardWords): string {
  const when = onlyIf && say(words, 'only-if', { question: onlyIf.ask, answers: onlyIf.answers.join(' / ') });
  return [`${phase}: ${pattern}`, ...(when ? [when] : [])].join('. ');
}

function passRow(pass: PassSetting, words: CardWords): readonly string[] {
  const { tool } = pass;
  const order = pass.order.length > 0 ? say(words, 'order', { order: pass.order.join(' ') }) : '';
  return [
    pass.say,
    settingWords(pass.setting, words),
    [tool?.say ?? '', tool?.socket ?? ''].filter(Boolean).join(', '),
    pass.lubrication ?? '',
    pass.generated ? `${order} ${say(words, 'generated')}` : order,
  ];
}

function settingWords(setting: Setting, words: CardWords): string {
  switch (setting.kind) {
    case 'torque':
    case 'repeat': {
      const figure = printed(setting.target);
      const target = setting.kind === 'repeat' ? say(words, 'repeat', { figure }) : figure;
      return setting.window === null ? target : `${target} ${windowWords(setting.window, words)}`;
    }
    case 'angle': {
      const over = setting.floor === undefined ? '' : `, > ${printed(setting.floor)}`;
      const turn = `${setting.degrees}° ${windowWords(setting.window, words)}${over}`;
      return setting.swings > 1 ? `${turn} ${say(words, 'swings', { swings: String(setting.swings) })}` : turn;
    }
    case 'slacken':
      return say(words, 'slacken', { degrees: String(setting.degrees) });
    case 'wait':
      return say(words, 'wait', { time: timeWords(setting.minutes, words), timer: setting.timer });
  }
}

const windowWords = ({ least, most }: { readonly least: number; readonly most: number }, words: CardWords): string =>
  say(words, 'window', { least: String(least), most: String(most) });

const limitRow = ({ say: name, whose, least, most }: Limit, words: CardWords): readonly string[] => [
  name,
  [
    least === undefined ? '' : say(words, 'least', { value: printed(least) }),
    most === undefined ? '' : say(words, 'most', { value: printed(most) }),
  ]
    .filter(Boolean)
    .join(', '),
  say(words, 'whose', { whose }),
];

/** A figure as the document prints it, with the pairs beside it. */
const printed = ({ printed: lead, also = [] }: Printed): string =>
  also.length === 0 ? lead : `${lead} (${also.map((other) => other.printed).join(', ')})`;

function timeWords(minutes: number, words: CardWords): string {
  const hours = Math.floor(minutes / 60);
  const rest = Math.round((minutes - hours * 60) * 100) / 100;
  return [
    hours > 0 ? say(words, 'hours', { hours: String(hours) }) : '',
    rest > 0 ? say(words, 'minutes', { minutes: String(rest) }) : '',
  ]
    .filter(Boolean)
    .join(' ');
}
