import type { BenchCard, CardReading, CardStep } from './bench-card';
import { assumedLine, expectedLine } from './words';

/** The card as a page of its own, to be printed on A4 or A5; nothing in it is fetched from anywhere. */
export function benchCardPage(card: BenchCard): string {
  const { name, about, cautions, note, unchecked, first, accepted, replaced, parts } = card;
  const body = [
    `<h1>Bench card: ${safe(name)}</h1>`,
    about.length === 0 ? '' : `<p class="about">${safe(about.join(' · '))}</p>`,
    unchecked === null ? '' : `<p><b>${safe(unchecked)}</b></p>`,
    `<ul class="cautions">${cautions.map((caution) => `<li>${safe(caution)}</li>`).join('')}</ul>`,
    `<p>${safe(note)}</p>`,
    list(
      'Not yet: mend this first',
      first.map(({ message, advice }) => `<b>${safe(message)}</b> ${safe(advice)}`),
    ),
    list(
      'Accepted risks',
      accepted.map(({ message, reason }) => `${safe(message)} <i>Accepted: ${safe(reason)}</i>`),
    ),
    list('Replaced by the workspace', replaced.map(safe)),
    ...parts.map(({ title, steps }) => `<h2>${safe(title)}</h2>\n<ol>${steps.map(stepItem).join('\n')}</ol>`),
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

function stepItem({ title, do: what, see, expected, readings, assumed }: CardStep): string {
  const lines = [
    ...expected.map((figure) => `<p class="expected">${safe(expectedLine(figure))}</p>`),
    readings.length === 0 ? '' : `<div class="readings">${readings.map(readingField).join('')}</div>`,
    assumed.length === 0 ? '' : `<p class="assumed">${safe(assumedLine(assumed))}</p>`,
  ];
  return `<li><span class="box"></span><div><h3>${safe(title)}</h3><p>${safe(what)}</p><p class="see">${safe(see)}</p>${lines.join('')}</div></li>`;
}

function readingField({ words, unit }: CardReading): string {
  return `<span>${safe(words)} <span class="line"></span> ${safe(unit)}</span>`;
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
ul, ol { margin: 0; padding: 0; list-style: none; }
ul li { margin: 0.6mm 0; }
.cautions { margin-top: 3mm; padding: 2mm 3mm; border: 0.5mm solid #000; }
ol li { display: grid; grid-template-columns: 5mm 1fr; gap: 2.5mm; padding: 1.8mm 0; border-bottom: 0.2mm solid #999; break-inside: avoid; }
.box { width: 4.5mm; height: 4.5mm; margin-top: 0.4mm; border: 0.4mm solid #000; }
.see::before { content: "See: "; font-weight: 700; }
.expected { font-weight: 700; }
.assumed { color: #444; }
.readings { display: flex; flex-wrap: wrap; gap: 1mm 6mm; margin-top: 1mm; }
.line { display: inline-block; width: 22mm; height: 5mm; border-bottom: 0.3mm solid #000; }
`;
