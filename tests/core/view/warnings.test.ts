import { describe, expect, test } from 'vitest';
import type { RuleName } from '../../../src/core/job/command';
import { benchView } from '../../../src/core/view/build-bench';
import { atFirstPass, passes, setAt, shipped, soFar, Workbench } from '../job/workbench';

const words = { show: () => '', label: (rule: string) => rule, examples: new Map() };

describe('the warnings of a step', () => {
  const hazardsOf = (w: Workbench): readonly string[] =>
    benchView(w.job, w.now(), words).hazards.map(({ text }) => text);
  const atTheCap = (): Workbench => {
    const w = new Workbench(shipped('tarnbeck-head-slice'));
    w.give('done');
    return w;
  };
  const [warning] = hazardsOf(atTheCap());

  test.each<[string, readonly RuleName[]]>([
    ['while it is worked, and whatever is asked meanwhile', ['tell-caution', 'tell-next', 'say-again', 'stop']],
    ['through a break, and after it', ['hold-on']],
    ['when the break is over', ['hold-on', 'im-back']],
    ['over night', ['knocking-off']],
    ['while a question waits', ['skip-step']],
    ['after the question was dropped', ['skip-step', 'cancel']],
    ['while a part is lost', ['dropped-one']],
    ['while the job is handed over', ['hand-over']],
  ])('stay %s', (_when, said) => {
    const w = atTheCap();
    w.all(...said);
    expect(warning).toBeTruthy();
    expect(hazardsOf(w)).toContain(warning);
  });

  test('stay when the job is taken up again', () => {
    const w = atTheCap();
    w.reopen(3_600_000);
    expect(hazardsOf(w)).toContain(warning);
  });

  test.each<[string, readonly RuleName[]]>([
    ['said to be done', ['done']],
    ['left for later', ['skip-step', 'confirm']],
  ])('go when their step is %s, which is how they are acknowledged', (_when, said) => {
    const w = atTheCap();
    w.all(...said);
    expect(hazardsOf(w)).not.toContain(warning);
  });

  test('stay through every pass of a tightening, set, marked and turned', () => {
    const w = atFirstPass();
    const first = hazardsOf(w);
    expect(first.length).toBeGreaterThan(0);
    passes(w, 3);
    for (const said of [setAt(90), 'all-marked', soFar(45), 'hold-on'] as const) {
      w.give(said);
      expect(hazardsOf(w)).toEqual(first);
    }
  });
});
