import type { BenchCard, CardReading, CardStep } from './bench-card';
import { assumedLine, expectedLine } from './words';

/** What Markdown would take for its own. */
const special = /[\\`*_{}[\]<>()#+!|~-]/g;

function plain(text: string): string {
  return text.replace(special, (character) => `\\${character}`);
}

/** The card as Markdown, with boxes to tick and lines to write on. */
export function benchCardMarkdown(card: BenchCard): string {
  const { name, about, cautions, note, unchecked, first, accepted, replaced, parts } = card;
  const lines = [
    `# Bench card: ${plain(name)}`,
    ...(about.length === 0 ? [] : ['', plain(about.join(' · '))]),
    '',
    ...(unchecked === null ? [] : [`**${plain(unchecked)}**`, '']),
    ...cautions.map((caution) => `> ${plain(caution)}  `),
    '',
    plain(note),
    ...(first.length === 0
      ? []
      : [
          '',
          '## Not yet: mend this first',
          '',
          ...first.map(({ message, advice }) => `- **${plain(message)}** ${plain(advice)}`),
        ]),
    ...(accepted.length === 0
      ? []
      : [
          '',
          '## Accepted risks',
          '',
          ...accepted.map(({ message, reason }) => `- ${plain(message)} Accepted: ${plain(reason)}`),
        ]),
    ...(replaced.length === 0
      ? []
      : ['', '## Replaced by the workspace', '', ...replaced.map((text) => `- ${plain(text)}`)]),
    ...parts.flatMap(({ title, steps }) => ['', `## ${plain(title)}`, ...steps.flatMap(stepLines)]),
  ];
  return `${lines.join('\n')}\n`;
}

function stepLines(step: CardStep): readonly string[] {
  const { title, do: what, see, expected, readings, assumed } = step;
  return [
    '',
    `- [ ] **${plain(title)}**  `,
    `  ${plain(what)}  `,
    `  *See:* ${plain(see)}`,
    ...expected.map((figure) => `  - ${plain(expectedLine(figure))}`),
    ...readings.map((reading) => `  - ${plain(readingLine(reading))}`),
    ...(assumed.length === 0 ? [] : [`  - ${plain(assumedLine(assumed))}`]),
  ];
}

function readingLine({ words, unit }: CardReading): string {
  return `${words}: ____________ ${unit}`.trimEnd();
}
