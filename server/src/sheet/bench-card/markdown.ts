import { withUnit } from '../../units/number-text';
import type { BenchCard, CardPart, CardReading, CardStep } from './card';
import { type CardTaken, isTicked, nothingTaken, progressLine, writtenIn } from './taken';
import { askedLine, assumedLine, expectedLine, onlyLine } from './words';

/** What Markdown would take for its own. */
const special = /[\\`*_{}[\]<>()#+!|~-]/g;

function plain(text: string): string {
  return text.replace(special, (character) => `\\${character}`);
}

/** The card as Markdown, with boxes to tick and lines to write on, and what was taken on it. */
export function benchCardMarkdown(card: BenchCard, taken: CardTaken = nothingTaken): string {
  const { name, about, cautions, note, unchecked, first, accepted, replaced, parts } = card;
  const done = progressLine(card, taken);
  const lines = [
    `# Bench card: ${plain(name)}`,
    ...(about.length === 0 ? [] : ['', plain(about.join(' · '))]),
    '',
    ...(unchecked === null ? [] : [`**${plain(unchecked)}**`, '']),
    ...(done === null ? [] : [`**${plain(done)}**`, '']),
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
    ...parts.flatMap((part) => partLines(part, taken)),
  ];
  return `${lines.join('\n')}\n`;
}

function partLines({ title, steps, signed, noticed }: CardPart, taken: CardTaken): readonly string[] {
  return [
    '',
    `## ${plain(title)}`,
    ...steps.flatMap((step) => stepLines(step, taken)),
    '',
    plain([...signed, noticed].map((reading) => readingText(reading, taken)).join('   ')),
  ];
}

function stepLines(step: CardStep, taken: CardTaken): readonly string[] {
  const { title, only, do: what, see, expected, readings, withPacks, asked, unknown, assumed } = step;
  return [
    '',
    `- [${isTicked(step, taken) ? 'x' : ' '}] **${plain(title)}**  `,
    ...(only === null ? [] : [`  ${plain(onlyLine(only))}  `]),
    `  ${plain(what)}  `,
    `  *See:* ${plain(see)}`,
    ...valueLines({ expected, readings }, taken, '  '),
    ...withPacks.flatMap(({ pack, ...values }) => [
      `  - **${plain(pack)}**`,
      ...valueLines(values, taken, '    '),
    ]),
    ...(asked.length === 0 ? [] : [`  - ${plain(askedLine(asked))}`]),
    ...asked.map((reading) => `    - ${plain(readingText(reading, taken))}`),
    ...unknown.map((text) => `  - ${plain(text)}`),
    ...(assumed.length === 0 ? [] : [`  - ${plain(assumedLine(assumed))}`]),
  ];
}

function valueLines(
  { expected, readings }: Pick<CardStep, 'expected' | 'readings'>,
  taken: CardTaken,
  indent: string,
): readonly string[] {
  return [
    ...expected.map((figure) => `${indent}- ${plain(expectedLine(figure))}`),
    ...readings.map((reading) => `${indent}- ${plain(readingText(reading, taken))}`),
  ];
}

function readingText({ id, words, unit, isWords }: CardReading, taken: CardTaken): string {
  const read = writtenIn(id, taken);
  return read === ''
    ? `${words}: ${'_'.repeat(isWords ? 36 : 12)} ${unit}`.trimEnd()
    : `${words}: ${withUnit(read, unit)}`;
}
