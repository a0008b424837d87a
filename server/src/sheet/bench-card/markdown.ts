import type { BenchCard, CardPart, CardReading, CardStep } from './card';
import { askedLine, assumedLine, expectedLine, onlyLine } from './words';

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
    ...parts.flatMap(partLines),
  ];
  return `${lines.join('\n')}\n`;
}

function partLines({ title, steps, signed, noticed }: CardPart): readonly string[] {
  return [
    '',
    `## ${plain(title)}`,
    ...steps.flatMap(stepLines),
    '',
    `${plain([...signed, noticed].map(readingText).join('   '))}`,
  ];
}

function stepLines(step: CardStep): readonly string[] {
  const { title, only, do: what, see, expected, readings, withPacks, asked, unknown, assumed } = step;
  return [
    '',
    `- [ ] **${plain(title)}**  `,
    ...(only === null ? [] : [`  ${plain(onlyLine(only))}  `]),
    `  ${plain(what)}  `,
    `  *See:* ${plain(see)}`,
    ...valueLines({ expected, readings }, '  '),
    ...withPacks.flatMap(({ pack, ...values }) => [`  - **${plain(pack)}**`, ...valueLines(values, '    ')]),
    ...(asked.length === 0 ? [] : [`  - ${plain(askedLine(asked))}`]),
    ...asked.map((reading) => `    - ${plain(readingText(reading))}`),
    ...unknown.map((text) => `  - ${plain(text)}`),
    ...(assumed.length === 0 ? [] : [`  - ${plain(assumedLine(assumed))}`]),
  ];
}

function valueLines(
  { expected, readings }: Pick<CardStep, 'expected' | 'readings'>,
  indent: string,
): readonly string[] {
  return [
    ...expected.map((figure) => `${indent}- ${plain(expectedLine(figure))}`),
    ...readings.map((reading) => `${indent}- ${plain(readingText(reading))}`),
  ];
}

function readingText({ words, unit, isWords }: CardReading): string {
  return `${words}: ${'_'.repeat(isWords ? 36 : 12)} ${unit}`.trimEnd();
}
