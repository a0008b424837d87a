import { withUnit } from '../../units/number-text';
import type { BenchCard, CardPart, CardReading, CardStep, WithPack } from './card';
import { type CardTaken, isTicked, nothingTaken, progressLine, writtenIn } from './taken';
import { askedLine, assumedLine, expectedWords, onlyLine } from './words';

/**
 * The card as a page of its own, to be printed on A4 or A5; nothing in it is fetched from anywhere. What was taken on it
 * is printed as well.
 */
export function benchCardPage(card: BenchCard, taken: CardTaken = nothingTaken): string {
  const { name, about, cautions, note, unchecked, first, accepted, replaced, parts } = card;
  const done = progressLine(card, taken);
  const body = [
    `<h1>Bench card: ${safe(name)}</h1>`,
    about.length === 0 ? '' : `<p class="about">${safe(about.join(' · '))}</p>`,
    unchecked === null ? '' : `<p><b>${safe(unchecked)}</b></p>`,
    done === null ? '' : `<p><b>${safe(done)}</b></p>`,
    `<ul class="cautions">${cautions.map((caution) => `<li>${safe(caution)}</li>`).join('')}</ul>`,
    `<p class="note">${safe(note)}</p>`,
    list(
      'Not yet: mend this first',
      first.map(({ message, advice }) => `<b>${safe(message)}</b> ${safe(advice)}`),
    ),
    list(
      'Accepted risks',
      accepted.map(({ message, reason }) => `${safe(message)} <i>Accepted: ${safe(reason)}</i>`),
    ),
    list('Replaced by the workspace', replaced.map(safe)),
    ...parts.map((part) => partSection(part, taken)),
  ];
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>Bench card: ${safe(name)}</title>
<style>${style}</style>
</head>
<body>
${body.filter((part) => part !== '').join('\n')}
</body>
</html>
`;
}

/** Text from a script as text, never as markup. */
function safe(text: string): string {
  const names: Readonly<Record<string, string>> = {
    '&': 'amp',
    '<': 'lt',
    '>': 'gt',
    '"': 'quot',
    "'": '#39',
  };
  return text.replace(/[&<>"']/g, (character) => `&${names[character] ?? ''};`);
}

function list(title: string, items: readonly string[]): string {
  if (items.length === 0) return '';
  return `<h2>${title}</h2>\n<ul>${items.map((item) => `<li>${item}</li>`).join('')}</ul>`;
}

function partSection({ title, steps, signed, noticed }: CardPart, taken: CardTaken): string {
  const signOff = [...signed, noticed].map((reading) => readingField(reading, taken)).join('');
  const items = steps.map((step) => stepItem(step, taken)).join('\n');
  return `<h2>${safe(title)}</h2>\n<ol>${items}</ol>\n<div class="readings signed">${signOff}</div>`;
}

function stepItem(step: CardStep, taken: CardTaken): string {
  const { title, only, do: what, see, expected, readings, withPacks, asked, unknown, assumed } = step;
  const lines = [
    `<h3>${safe(title)}</h3>`,
    only === null ? '' : `<p class="only">${safe(onlyLine(only))}</p>`,
    `<p>${safe(what)}</p>`,
    `<p class="see">${safe(see)}</p>`,
    values({ expected, readings }, taken),
    withPacks.length === 0 ? '' : `<dl>${withPacks.map((row) => packRow(row, taken)).join('')}</dl>`,
    asked.length === 0 ? '' : `<p class="assumed">${safe(askedLine(asked))}</p>`,
    fields(asked, taken),
    ...unknown.map((text) => `<p class="assumed">${safe(text)}</p>`),
    assumed.length === 0 ? '' : `<p class="assumed">${safe(assumedLine(assumed))}</p>`,
  ];
  return `<li><span class="box">${isTicked(step, taken) ? '✓' : ''}</span><div>${lines.join('')}</div></li>`;
}

function packRow({ pack, ...own }: WithPack, taken: CardTaken): string {
  return `<div><dt>${safe(pack)}</dt><dd>${values(own, taken)}</dd></div>`;
}

function values({ expected, readings }: Pick<CardStep, 'expected' | 'readings'>, taken: CardTaken): string {
  const figures = expected.map((figure) => {
    const { about, text, between } = expectedWords(figure);
    return `<p>${safe(about)} <b>${safe(text)}</b>${safe(between)}</p>`;
  });
  return `${figures.join('')}${fields(readings, taken)}`;
}

function fields(readings: readonly CardReading[], taken: CardTaken): string {
  const all = readings.map((reading) => readingField(reading, taken)).join('');
  return all === '' ? '' : `<div class="readings">${all}</div>`;
}

function readingField({ id, words, unit, isWords }: CardReading, taken: CardTaken): string {
  const room = isWords ? 'words' : 'figure';
  const read = writtenIn(id, taken);
  const shown = withUnit(read, unit);
  // A unit that was written with the reading stands there already.
  const behind = read !== '' && shown === read ? '' : unit;
  return `<span class="${room}">${safe(words)} <span class="line">${safe(read)}</span> ${safe(behind)}</span>`;
}

const style = `
@page { margin: 12mm 11mm; }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 0; max-width: 190mm; color: #000; background: #fff; font: 10pt/1.4 system-ui, sans-serif; }
@media screen { body { padding: 8mm; } }
h1 { margin: 0; font-size: 16pt; }
h2 { margin: 5mm 0 1.5mm; padding-bottom: 0.5mm; border-bottom: 0.4mm solid #000; font-size: 12pt; break-after: avoid; }
h3 { margin: 0; font-size: 10.5pt; }
p { margin: 0; overflow-wrap: anywhere; }
.about { font-size: 11pt; }
.note { margin-top: 2mm; }
ul, ol { margin: 0; padding: 0; list-style: none; }
ul li { margin: 0.6mm 0; }
.cautions { margin-top: 3mm; padding: 2mm 3mm; border: 0.5mm solid #000; }
ol li { display: grid; grid-template-columns: 5mm 1fr; gap: 2.5mm; padding: 1.8mm 0; border-bottom: 0.2mm solid #999; break-inside: avoid; }
ol li:has(dl) { break-inside: auto; }
ol li:has(dl) p { break-after: avoid; }
.box { width: 4.5mm; height: 4.5mm; margin-top: 0.4mm; border: 0.4mm solid #000; font: 700 4.5mm/3.7mm system-ui, sans-serif; text-align: center; }
.see::before { content: "See: "; font-weight: 700; }
.assumed { color: #444; }
.only { font-weight: 700; }
.readings { display: flex; flex-wrap: wrap; gap: 1mm 6mm; margin-top: 1mm; }
.readings > span { display: flex; align-items: baseline; gap: 1.5mm; }
.readings .words { flex: 1 1 60mm; }
.line { flex: 0 0 22mm; min-height: 6mm; overflow-wrap: anywhere; border-bottom: 0.3mm solid #000; }
.words .line { flex: 1 1 30mm; }
.signed { margin-top: 2.5mm; break-inside: avoid; break-before: avoid; }
dl { margin: 1mm 0 0; }
dl > div { display: grid; grid-template-columns: 18mm 1fr; gap: 2mm; align-items: baseline; padding: 1mm 0; border-top: 0.2mm dotted #666; break-inside: avoid; }
dt { font-weight: 700; overflow-wrap: anywhere; }
dd { margin: 0; }
`;
