/** A small document with nothing wrong in it and something of everything, to be broken in one place at a time. */
export const SOUND = `format: 1
language: en
id: sound
title: A sound document
edition: '1'
demonstration: true
source: Invented for this test.
machine: Test bench
tools:
  wrench: { say: torque wrench, range: 10–100 N·m }
  bar: { say: breaker bar }
parts:
  seal: { say: seal, quantity: 1, use: new }
  bolt: { say: bolt, quantity: 4, use: measured, rule: Below 50 mm. }
patterns:
  lid:
    say: lid
    joint: head
    viewed-from: above
    grid:
      columns: { say: [front, rear], at: [0, 100] }
      rows: { say: [left, right], at: [0, 80] }
      numbers: [[1, 3], [4, 2]]
    details:
      - { numbers: [1, 2], group: large, length: 60 mm, hole: blind }
      - { numbers: [3, 4], group: small }
    order: [1, 2, 3, 4]
loose-ends:
  hose-{side}: { for: [left, right], say: '{side} hose', kind: removed, blocks: crank }
timers:
  cure: { say: cure, time: 30 min }
limits:
  gap: { say: gap, whose: the test, most: 0.05 mm (0.002 in) }
phases:
  - id: strip
    say: Strip
    steps:
      - id: look
        say: Look at the lid.
        finding:
          ask: What is it like?
          answers: { dry: [dry], wet: [wet] }
      - id: off-{side}
        for: [left, right]
        kind: remove
        say: Take the {side} hose off.
        opens: ['hose-{side}']
        stow:
          - { where: bench, what: '{side} hose', quantity: 1 }
      - id: ease
        kind: slacken
        say: Slacken the lid.
        pattern: lid
        passes:
          - { id: ease, say: ease, slacken: 90°, order: reverse }
      - id: gaps
        kind: measure
        say: Measure the gap.
        readings: { front: front gap, rear: rear gap }
        unit: mm
        between: [0, 1]
        decimals: 2
        limit: gap
  - id: build
    say: Build
    steps:
      - id: lay
        kind: hold
        say: Lay the seal.
        parts: [seal, bolt]
        starts-timers: [cure]
        read-back:
          ask: Which face is up?
          right: { bright: [bright face] }
          wrong: { dull: [dull face], none: [cannot tell] }
          if-wrong: Turn it over.
      - id: tighten
        kind: tighten
        say: Tighten the lid.
        pattern: lid
        tool: wrench
        recovery:
          over: { action: restart-all, say: Start again. }
        passes:
          - { id: low, say: low, torque: 20 N·m (15 lbf·ft) }
          - { id: again, say: again, repeat: 20 N·m (15 lbf·ft), of: small }
          - { id: high, say: high, torque: 40 N·m, window: 38–42 N·m, of: large }
          - { id: rest, say: rest, wait: cure }
          - { id: turn, say: turn, angle: 90° (85–95), of: large, tool: bar, swings: 2 }
      - id: hoses-on
        kind: refit
        say: Both hoses on.
        closes: [hose-left, hose-right]
      - id: oil
        kind: fill
        only-if: { step: look, answers: [wet] }
        say: Fill with oil.
        what: oil
        amount: 4.5 L
      - id: turn-over
        say: Crank it.
        milestone: crank
        needs-timers: [cure]
`;

/** Where the mark stands in a text, counted from 1, and the text without it. */
export function marked(text: string): { readonly text: string; readonly line: number; readonly column: number } {
  const at = text.indexOf('▮');
  if (at < 0) throw new Error('the case marks no place');
  const before = text.slice(0, at).split('\n');
  const column = (before.at(-1)?.length ?? 0) + 1;
  return { text: text.slice(0, at) + text.slice(at + 1), line: before.length, column };
}

/** The sound document with one piece of it written otherwise. */
export function broken(piece: string, instead: string): string {
  if (SOUND.split(piece).length !== 2) throw new Error(`"${piece}" is not in the document exactly once`);
  return SOUND.replace(piece, () => instead);
}
