import { cardSections } from './card-sections';
import { type CardWords, say } from './card-words';
import type { JobCard } from './job-card';

const BOX = '[ ]';
const LINE = '________';

/** The card as plain text, for a terminal or a till printer. Columns are parted by two spaces or more. */
export function cardText(card: JobCard, words: CardWords): string {
  const head = [
    `${say(words, 'title')}: ${card.title}`,
    card.machine,
    `${say(words, 'edition')}: ${card.edition}`,
    `${say(words, 'source')}: ${card.source}`,
    ...(card.demonstration ? [`*** ${say(words, 'demonstration')} ***`] : []),
    say(words, 'makers-first'),
    `${say(words, 'job-number')} ${LINE}  ${say(words, 'date')} ${LINE}  ${say(words, 'mechanic')} ${LINE}`,
  ];
  const body = cardSections(card, words).flatMap(({ title, groups, tick }) => [
    '',
    title.toUpperCase(),
    ...groups.flatMap((group) => [
      ...(group.title === '' ? [] : [`  ${group.title}`]),
      ...inColumns(group.rows).map((row) => `    ${tick ? `${BOX} ` : ''}${row}`),
    ]),
  ]);
  return `${[...head, ...body].join('\n')}\n`;
}

function inColumns(rows: readonly (readonly string[])[]): readonly string[] {
  const columns = Math.max(0, ...rows.map((row) => row.length));
  const widths = Array.from({ length: columns }, (_, c) => Math.max(...rows.map((row) => (row[c] ?? '').length)));
  return rows.map((row) =>
    row
      .map((cell, c) => cell.padEnd(widths[c] ?? 0))
      .join('  ')
      .trimEnd(),
  );
}
