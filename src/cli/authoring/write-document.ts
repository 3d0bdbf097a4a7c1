import type { Draft, PassDraft } from './draft';
import { ordinal } from './read-layout';
import { figureScalar, scalar } from './scalar';
import { patternLines } from './write-pattern';
import { toolLines, usesTurnTool } from './write-tools';

/**
 * A procedure document with comments, ready for the checker. `schema` is where an editor finds the schema, as a path
 * from the new file. Nothing is invented but what a comment says: rules of recovery are never made up.
 */
export function writeDocument(draft: Draft, schema: string): string {
  const lines = [
    `# yaml-language-server: $schema=${schema}`,
    '# Read through every line against the page of the manual: what is wrong here will be spoken as if it were right.',
    'format: 1',
    'language: en',
    `id: ${draft.id}`,
    `title: ${scalar(draft.title)}`,
    `edition: ${scalar(draft.edition)}`,
    '# True where the figures are invented or not from the maker of the machine at hand; it is then said aloud.',
    `demonstration: ${draft.demonstration}`,
    `source: ${scalar(draft.source)}`,
    `machine: ${scalar(draft.machine)}`,
    '',
    ...toolLines(draft),
    '',
    ...partLines(draft),
    '',
    ...patternLines(draft),
    '',
    ...timerLines(draft),
    'phases:',
    ...makeReadyLines(),
    ...tightenLines(draft),
    ...lookOverLines(),
  ];
  return `${lines.join('\n')}\n`;
}

const partLines = ({ bolts, layout, name }: Draft): readonly string[] => [
  'parts:',
  '  # use: new is bought for the job, reuse goes back, measured also needs "rule:", what decides about it.',
  `  bolt: { say: ${scalar(`${name} bolt`)}, quantity: ${countOf(layout)}, use: ${bolts} }`,
];

const countOf = (layout: Draft['layout']): number => {
  switch (layout.kind) {
    case 'circle':
      return layout.count;
    case 'grid':
      return layout.numbers.flat().filter((n) => n > 0).length;
    case 'places':
      return layout.at.length;
  }
};

/** Each wait has a timer of its own: one that has run out once would be over at once the second time. */
function timerLines({ passes }: Draft): readonly string[] {
  const waits = passes.flatMap((pass, index) =>
    pass.kind === 'wait'
      ? [`  wait-${index + 1}: { say: the wait between passes, time: ${figureScalar(pass.figure)} }`]
      : [],
  );
  return waits.length > 0 ? ['timers:', ...waits, ''] : [];
}

const makeReadyLines = (): readonly string[] => [
  '  - id: make-ready',
  '    say: Make ready',
  '    steps:',
  '      - id: clean',
  '        say: Clean the faces and the threads.',
  '        # Warnings can hurt a person, cautions can damage the machine; both are spoken before the step.',
  '        warnings:',
  '          - Wear eye protection.',
  '      - id: bolts-in',
  '        say: Run every bolt in by hand.',
  '        parts: [bolt]',
];

function tightenLines(draft: Draft): readonly string[] {
  const { name, passes, lubrication } = draft;
  return [
    '  - id: tighten',
    '    say: Tighten',
    '    steps:',
    '      - id: tighten-pattern',
    '        kind: tighten',
    `        say: ${scalar(`Tighten the ${name} in order.`)}`,
    '        pattern: pattern',
    '        # Dry, oiled or sealed, as the manual says: it is read out with the torque.',
    ...(lubrication === '' ? ['        # lubrication: oiled'] : [`        lubrication: ${scalar(lubrication)}`]),
    ...recoveryLines(draft),
    '        passes:',
    ...passes.flatMap((pass, index) => passLines(pass, index, draft).map((line) => `          ${line}`)),
  ];
}

const OVER_SAY = {
  'restart-bolt': 'Slacken that bolt fully. Take it through every pass again.',
  'restart-all': 'Slacken all in reverse. Start again at the first pass.',
  accept: 'Leave it as it is and write it down.',
  'redo-bolt': 'Pull that bolt again.',
  'repeat-pass': 'Do this pass again from its first bolt.',
} as const;

/** A fault with no rule stops the job until the manual has been looked at, which is better than a rule made up here. */
const recoveryLines = ({ over }: Draft): readonly string[] =>
  over === null
    ? [
        '        # What the manual says when a bolt goes wrong. Without a rule the job stops: check the manual.',
        '        # recovery:',
        '        #   over: { action: restart-bolt, say: Slacken that bolt fully. Take it through every pass again. }',
      ]
    : [
        '        # What the manual says when a bolt goes wrong. A fault without a rule stops the job.',
        '        recovery:',
        `          over: { action: ${over}, say: ${scalar(OVER_SAY[over])} }`,
      ];

function passLines(pass: PassDraft, index: number, draft: Draft): readonly string[] {
  const head = `id: pass-${index + 1}, say: ${ordinal(index)} pass`;
  const of = pass.kind === 'wait' || pass.of === null ? '' : `, of: ${pass.of}`;
  switch (pass.kind) {
    case 'torque':
    case 'repeat':
      return [`- { ${head}, ${pass.kind}: ${figureScalar(pass.figure)}${of}, tool: torque-wrench }`];
    case 'angle':
      return [
        ...(pass.windowAssumed
          ? ['# The window is the usual five degrees either way. The manual may give its own.']
          : []),
        `- { ${head}, angle: ${figureScalar(pass.figure)}${of}, tool: ${usesTurnTool(draft) ? 'turn-tool' : 'torque-wrench'} }`,
      ];
    case 'slacken':
      return [`- { ${head}, slacken: ${figureScalar(pass.figure)}${of}, order: reverse }`];
    case 'wait':
      return [`- { ${head}, wait: wait-${index + 1} }`];
  }
}

const lookOverLines = (): readonly string[] => [
  '  - id: look-over',
  '    say: Look over',
  '    steps:',
  '      - id: no-tool-left',
  '        say: Look over the work. No tool and no rag left behind.',
  '        milestone: hand-back',
];
