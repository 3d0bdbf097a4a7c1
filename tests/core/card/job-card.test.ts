import { describe, expect, test } from 'vitest';
import { checkDocument } from '../../../src/cli/check-document';
import { readCardWords } from '../../../src/cli/tongue-files';
import { cardHtml } from '../../../src/core/card/card-html';
import { cardText } from '../../../src/core/card/card-text';
import { heldTogether } from '../../../src/core/card/held-together';
import { jobCard } from '../../../src/core/card/job-card';
import type { Procedure } from '../../../src/core/procedure/procedure';
import { shipped } from '../job/workbench';
import { broken, SOUND } from '../procedure/sound-document';

function read(text: string): Procedure {
  const checked = checkDocument(text, 'sound.yaml');
  if (!checked.ok) throw new Error(JSON.stringify(checked.error, null, 1));
  return checked.value;
}

const ENGLISH_CARD = readCardWords('en');
const card = jobCard(read(SOUND));
const head = jobCard(shipped('tarnbeck-head-gasket'));

describe('the card holds', () => {
  test('the tools of each phase once, those of its passes too', () => {
    expect(card.tools.map(({ phase, tools }) => [phase, ...tools.map(({ say }) => say)])).toEqual([
      ['Build', 'torque wrench', 'breaker bar'],
    ]);
  });

  test('a setting for every pass, with the figure and the pair as printed', () => {
    const tightening = card.settings.at(-1)?.passes.map(({ setting }) => setting);
    expect(tightening).toEqual([
      expect.objectContaining({ kind: 'torque', target: expect.objectContaining({ printed: '20 N·m' }) }),
      expect.objectContaining({ kind: 'repeat', target: expect.objectContaining({ printed: '20 N·m' }) }),
      expect.objectContaining({ kind: 'torque', window: { least: 38, most: 42 } }),
      { kind: 'wait', timer: 'cure', minutes: 30 },
      { kind: 'angle', degrees: 90, window: { least: 85, most: 95 }, swings: 2 },
    ]);
  });

  test('what is bought and used once apart from what is measured first', () => {
    expect(card.parts.singleUse.map(({ say }) => say)).toEqual(['seal']);
    expect(card.parts.measured).toEqual([expect.objectContaining({ say: 'bolt', rule: 'Below 50 mm.' })]);
    expect(head.parts.consumables.map(({ say }) => say)).toContain('thread sealer');
    expect(head.parts.singleUse.map(({ say }) => say)).not.toContain('thread sealer');
  });

  test('every part of the document exactly once', () => {
    const { singleUse, consumables, measured, reused } = head.parts;
    const listed = [...singleUse, ...consumables, ...measured, ...reused].map(({ id }) => id).sort();
    expect(listed).toEqual([...shipped('tarnbeck-head-gasket').parts.keys()].sort());
  });

  test('every rule of the document with its figures as printed, and whose they are', () => {
    expect(head.rules.map(({ say, figures, whose }) => [say, figures, whose])).toEqual([
      ['three quarters of the highest', ['75 %'], 'common practice'],
      ['within a tenth of the highest', ['10 %'], 'common practice'],
      ['less than a tenth lost', ['10 %'], 'common practice'],
      ['one limit for all six lines', ['0.05 mm'], 'Tarnbeck demonstration figures'],
      ['the budget of one head', ['0.20 mm'], 'Tarnbeck demonstration figures'],
      ['length under the head', ['62.5 mm'], 'Tarnbeck demonstration figures'],
      ['half and half', ['10.5 L', '50 %'], 'Tarnbeck demonstration figures'],
    ]);
    const printed = cardText(head, ENGLISH_CARD);
    expect(printed).toContain('RULES FOR WORKING READINGS OUT');
    for (const { say, figures } of head.rules) for (const words of [say, ...figures]) expect(printed).toContain(words);
  });

  test('bags and slots in the order they are filled, the same place only once', () => {
    expect(card.stowage).toEqual([
      {
        where: 'bench',
        items: [
          { what: 'left hose', quantity: 1 },
          { what: 'right hose', quantity: 1 },
        ],
      },
    ]);
  });

  test('under which answer a tightening is done', () => {
    const conditions = head.settings.flatMap(({ onlyIf }) => (onlyIf ? [onlyIf.answers] : []));
    expect(conditions).toEqual([['layered steel'], ['soft composite'], ['layered steel'], ['soft composite']]);
  });
});

describe('as text', () => {
  const text = cardText(card, ENGLISH_CARD);

  test.each([
    ['the mark of a demonstration', '*** Demonstration data'],
    ['the pair as the manual prints it', '20 N·m (15 lbf·ft)'],
    ['the window', '40 N·m [38–42]'],
    ['the swings', '90° [85–95] in 2 swings'],
    ['the order of a slackening', 'order 4 3 2 1'],
    ['the rule of a measured part', 'Below 50 mm.'],
    ['a wait and its time', 'wait 30 min: cure'],
    ['whose a limit is', 'at most 0.05 mm (0.002 in)  limit of the test'],
    ['a filling', 'oil  4.5 L'],
    ['a box to tick', '[ ] 1 ×  seal'],
  ])('it shows %s', (_name, words) => expect(text).toContain(words));

  test('a document that is no demonstration has no mark of one', () => {
    const real = jobCard(read(broken('demonstration: true', 'demonstration: false')));
    expect(cardText(real, ENGLISH_CARD)).not.toContain('Demonstration');
    expect(cardHtml(real, ENGLISH_CARD)).not.toContain('Demonstration');
  });

  test('an order worked out by rule is marked', () => {
    const worked = read(broken('order: [1, 2, 3, 4]', 'order: centre-out\n    generated: true'));
    expect(cardText(jobCard(worked), ENGLISH_CARD)).toContain('worked out by rule');
    expect(text).not.toContain('worked out by rule');
  });

  test('no word of the card is left unfilled or unused', () => {
    const all = cardText(head, ENGLISH_CARD) + text;
    expect(all).not.toMatch(/\{\w+\}/);
    expect(all).not.toContain('undefined');
  });
});

describe('as a page', () => {
  const page = cardHtml(head, ENGLISH_CARD);

  test('it has no script, fetches nothing and keeps its own style', () => {
    expect(page).not.toMatch(/<script|<link|<img|https?:|@import|url\(/i);
    expect(page.match(/<style>/g)).toHaveLength(1);
  });

  test('it says all that the text says', () => {
    const words = (text: string): readonly string[] => text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
    const said = new Set(
      words(
        page
          .replace(/<style>[\s\S]*<\/style>/, '')
          .replace(/<[^>]+>/g, ' ')
          .replace(/&#?\w+;/g, ' '),
      ),
    );
    expect(words(cardText(head, ENGLISH_CARD).replace(/'/g, ' ')).filter((word) => !said.has(word))).toEqual([]);
  });

  test('the bags and slots begin a page of their own, with room to write', () => {
    expect(page).toMatch(/<section class="page">\n<h2>Bags and slots<\/h2>/);
    expect(page.match(/class="write"/g)?.length).toBe(head.stowage.flatMap(({ items }) => items).length);
  });

  test('words of a document never become markup', () => {
    const sly = jobCard(read(broken('title: A sound document', 'title: \'<script>alert(1)</script> & "co"\'')));
    expect(cardHtml(sly, ENGLISH_CARD)).not.toContain('<script');
    expect(cardHtml(sly, ENGLISH_CARD)).toContain('&lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;co&quot;');
  });

  test('every tag is closed', () => {
    const open: string[] = [];
    for (const [, slash, name = ''] of page.replace(/<!doctype html>/, '').matchAll(/<(\/?)(\w+)[^>]*>/g))
      if (name === 'meta') continue;
      else if (slash === '') open.push(name);
      else expect(open.pop()).toBe(name);
    expect(open).toEqual([]);
  });
});

test.each([
  ['again 12 N·m (106 lbf·in)', 'again 12\u00a0N·m (106\u00a0lbf·in)'],
  ['small torque wrench, 10 mm', 'small torque wrench, 10\u00a0mm'],
  ['at most 105 °C (221 °F)', 'at most 105\u00a0°C (221\u00a0°F)'],
  ['order 1 2 3 14', 'order 1 2 3 14'],
  ['90° [85–95] in 2 swings', '90° [85–95] in 2\u00a0swings'],
])('%s keeps each figure with its unit', (text, held) => {
  expect(heldTogether(text)).toBe(held);
});
