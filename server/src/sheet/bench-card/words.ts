import { listed } from '../../checks/report/listed';
import { uncapitalised } from '../../units/capitals';
import type { CardFigure, CardStep } from './card';

/** What is expected, as every form of the card says it: "Expected: throttle in the hover", "25.5 %", ", 22.6 to 29.1" */
export function expectedWords({ words, text, span }: CardFigure) {
  const about = `Expected: ${uncapitalised(words)}`;
  return { about, text, between: span === null ? '' : `, ${intervalWords(span)}` };
}

/** The same in one line. */
export function expectedLine(figure: CardFigure): string {
  const { about, text, between } = expectedWords(figure);
  return `${about} ${text}${between}`;
}

/** Which packs a step is for, where others do without it. */
export function onlyLine(only: readonly string[]): string {
  return `Only with ${listed(only)}.`;
}

/** What stands above the settings that a step asks for. */
export function askedLine(asked: CardStep['asked']): string {
  return asked.length === 1
    ? 'The script does not say this yet: write down what you find, and put it into the script.'
    : 'The script does not say these yet: write down what you find, and put them into the script.';
}

export function assumedLine(assumed: readonly string[]): string {
  return `The script leaves this out, so it is assumed: ${assumed.join(', ')}`;
}

/** "22.6–29.1" as people say it: "22.6 to 29.1". */
function intervalWords(span: string): string {
  return span.replace('–', ' to ');
}
