import { escaped } from '../drawing/escaped';
import { type CardSection, cardSections } from './card-sections';
import { type CardWords, say } from './card-words';
import { heldTogether } from './held-together';
import type { JobCard } from './job-card';

/** Black on white, boxes wide enough for a pencil; a table is never parted from its heading by the end of a page. */
const STYLE = `
@page { margin: 14mm; }
body { font: 11pt/1.35 sans-serif; color: #000; background: #fff; margin: 0 auto; max-width: 190mm; }
h1 { font-size: 17pt; margin: 0 0 2mm; }
h2 { font-size: 13pt; margin: 6mm 0 2mm; border-bottom: 0.6mm solid #000; break-after: avoid; }
h3 { font-size: 11pt; margin: 3mm 0 1mm; break-after: avoid; }
table { border-collapse: collapse; width: 100%; }
td { border: 0.2mm solid #777; padding: 1mm 2mm; vertical-align: top; }
tr { break-inside: avoid; }
td.tick { width: 5mm; border: 0.4mm solid #000; }
td.write { width: 35mm; }
section.page { break-before: page; }
p { margin: 0 0 1mm; }
p.demonstration { border: 0.8mm solid #000; padding: 2mm; font-weight: bold; }
p.lines span { display: inline-block; min-width: 45mm; border-bottom: 0.2mm solid #000; margin-right: 6mm; }
`;

/** The card as one HTML page to be printed: no scripts, nothing fetched, its own small style. */
export function cardHtml(card: JobCard, words: CardWords): string {
  const title = escaped(`${say(words, 'title')}: ${card.title}`);
  const lines = (['job-number', 'date', 'mechanic'] as const).map((key) => `${escaped(say(words, key))} <span></span>`);
  return `<!doctype html>
<html lang="${escaped(card.language)}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>${title}</title>
<style>${STYLE}</style>
</head>
<body>
<header>
<h1>${title}</h1>
${card.demonstration ? `<p class="demonstration">${escaped(say(words, 'demonstration'))}</p>\n` : ''}<p>${escaped(card.machine)}</p>
<p>${escaped(say(words, 'edition'))}: ${escaped(card.edition)}</p>
<p>${escaped(say(words, 'source'))}: ${escaped(card.source)}</p>
<p>${escaped(say(words, 'makers-first'))}</p>
<p class="lines">${lines.join(' ')}</p>
</header>
${cardSections(card, words).map(sectionHtml).join('\n')}
</body>
</html>
`;
}

/** The map of bags and slots begins a page of its own: it is the one that goes to the bench and is written on. */
function sectionHtml({ title, groups, tick, write }: CardSection): string {
  const tables = groups.map(({ title: name, rows }) => {
    const heading = name === '' ? '' : `<h3>${escaped(name)}</h3>\n`;
    const body = rows.map((row) => rowHtml(row, tick, write)).join('\n');
    return `${heading}<table>\n${body}\n</table>`;
  });
  return `<section${write ? ' class="page"' : ''}>\n<h2>${escaped(title)}</h2>\n${tables.join('\n')}\n</section>`;
}

const rowHtml = (row: readonly string[], tick: boolean, write: boolean): string =>
  `<tr>${tick ? '<td class="tick"></td>' : ''}${row.map((cell) => `<td>${escaped(heldTogether(cell))}</td>`).join('')}${
    write ? '<td class="write"></td>' : ''
  }</tr>`;
