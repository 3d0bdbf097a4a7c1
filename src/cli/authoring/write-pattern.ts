import type { Draft, LayoutDraft } from './draft';
import { flowList, flowTexts, scalar } from './scalar';

/** The pattern: where its fasteners are and in which order they are tightened. */
export const patternLines = (draft: Draft): readonly string[] => [
  'patterns:',
  '  pattern:',
  `    say: ${scalar(draft.name)}`,
  '    # A head is gasketed: it is never eased bolt by bolt, and its order is its maker’s.',
  `    joint: ${draft.joint}`,
  '    # How to hold the picture, so that left and right are the same for everyone.',
  `    viewed-from: ${scalar(draft.viewedFrom)}`,
  ...landmarkLines(draft.layout),
  ...layoutLines(draft.layout),
  ...detailLines(draft),
  ...orderLines(draft),
];

const landmarkLines = (layout: LayoutDraft): readonly string[] => {
  const { left, top, right, bottom } = frameOf(layout);
  const corners = [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
  return [
    '    # The edge of the casting and what can be seen on it, in millimetres: to the right, then down.',
    `    outline: [${corners.map((corner) => `[${corner.map(rounded).join(', ')}]`).join(', ')}]`,
    '    # landmarks:',
    `    #   - { say: radiator end, at: [${rounded(left)}, ${rounded((top + bottom) / 2)}] }`,
  ];
};

/** A box around the fasteners, since nothing is known of the casting: a guess that the drawing shows as one. */
function frameOf(layout: LayoutDraft) {
  const spots = spotsOf(layout);
  const xs = spots.map(({ x }) => x);
  const ys = spots.map(({ y }) => y);
  const room = Math.max(10, (Math.max(...xs) - Math.min(...xs) + Math.max(...ys) - Math.min(...ys)) / 16);
  return {
    left: Math.min(...xs) - room,
    top: Math.min(...ys) - room,
    right: Math.max(...xs) + room,
    bottom: Math.max(...ys) + room,
  };
}

type Spot = { readonly x: number; readonly y: number };

function spotsOf(layout: LayoutDraft): readonly Spot[] {
  switch (layout.kind) {
    case 'circle': {
      const radius = layout.diameter / 2;
      return [
        { x: -radius, y: -radius },
        { x: radius, y: radius },
      ];
    }
    case 'grid':
      return [
        { x: 0, y: 0 },
        { x: (layout.columns.length - 1) * layout.pitch.x, y: (layout.rows.length - 1) * layout.pitch.y },
      ];
    case 'places':
      return layout.at;
  }
}

const rounded = (value: number): number => Math.round(value * 100) / 100 + 0;

function layoutLines(layout: LayoutDraft): readonly string[] {
  switch (layout.kind) {
    case 'circle':
      return [
        '    # Numbered clockwise from the top; each is called by its place on a clock face.',
        `    circle: { count: ${layout.count}, diameter: ${layout.diameter} }`,
      ];
    case 'grid':
      return [
        '    # Each fastener is called by its column and its row. Put in words that can be seen on the engine.',
        '    grid:',
        `      columns: { say: ${flowTexts(layout.columns)}, at: ${flowList(steps(layout.columns.length, layout.pitch.x))} }`,
        `      rows: { say: ${flowTexts(layout.rows)}, at: ${flowList(steps(layout.rows.length, layout.pitch.y))} }`,
        '      numbers:',
        ...layout.numbers.map((line) => `        - ${flowList(line)}`),
      ];
    case 'places':
      return [
        '    # Say where each is in words that can be seen on the engine; a change of row is spoken.',
        '    fasteners:',
        ...layout.at.map((at, index) => {
          const { across, down } = third(at, layout.at);
          return `      - { number: ${index + 1}, at: [${at.x}, ${at.y}], say: ${scalar(`${down} ${across}`)}, row: ${down} }`;
        }),
      ];
  }
}

const steps = (count: number, pitch: number): readonly number[] =>
  Array.from({ length: count }, (_, index) => rounded(index * pitch));

/** Which third of the picture a place is in: enough to find it, and the number tells neighbours apart. */
function third(at: Spot, all: readonly Spot[]): { readonly across: string; readonly down: string } {
  const word = (value: number, values: readonly number[], words: readonly [string, string, string]): string => {
    const least = Math.min(...values);
    const share = (value - least) / (Math.max(...values) - least || 1);
    return share < 1 / 3 ? words[0] : share > 2 / 3 ? words[2] : words[1];
  };
  return {
    across: word(
      at.x,
      all.map(({ x }) => x),
      ['left', 'middle', 'right'],
    ),
    down: word(
      at.y,
      all.map(({ y }) => y),
      ['upper', 'centre', 'lower'],
    ),
  };
}

const detailLines = ({ subsets }: Draft): readonly string[] =>
  subsets.length === 0
    ? []
    : [
        '    # What some have in common. Also: length: 95 mm, hole: blind, wet or through, sealer.',
        '    details:',
        ...subsets.map(({ name, numbers }) => `      - { numbers: ${flowList(numbers)}, group: ${name} }`),
      ];

function orderLines({ order, joint }: Draft): readonly string[] {
  if (order.kind === 'listed') return [`    order: ${flowList(order.numbers)}`];
  return [
    '    # Worked out by rule, which is said aloud. Write the maker’s own order here as soon as there is one.',
    `    order: ${order.rule}`,
    ...(joint === 'head' ? ['    generated: true'] : []),
  ];
}
