import { shortNumber } from '../../units/number-text';
import type { ProposalReading } from './answer';
import { type Holds, holdLimits } from './wish';

/** The unit in which each hold is typed, and its sign there: a tone is asked for by what is taken off it. */
const holdUnits: Readonly<Record<keyof Holds, { readonly unit: string; readonly sign: 1 | -1 }>> = {
  toneLeft: { unit: 'dB', sign: -1 },
  phaseMargin: { unit: 'deg', sign: 1 },
  gainMargin: { unit: 'times', sign: 1 },
  minutes: { unit: 'min', sign: 1 },
};

/** A hold as it was typed: `12`, `12 dB`, `any`. What is wrong with it, as the end of a sentence, where it can't be read. */
export function readHold(name: keyof Holds, typed: string): number | null | string {
  const { unit, sign } = holdUnits[name];
  const text = typed.trim();
  if (text === '' || text === 'any') return null;
  const [number = ''] = /^\d+(?:\.\d+)?/.exec(text) ?? [];
  const given = text.slice(number.length).trim();
  if (number === '' || (given !== '' && given !== unit))
    return `takes a number of ${unit}, or any, not "${text}"`;
  const value = sign * Number(number);
  const [low, high] = holdLimits[name];
  if (value < low || value > high) {
    const ends = [low, high].map((end) => sign * end).sort((one, other) => one - other);
    return `takes ${ends.join(' to ')} ${unit}, not ${text}`;
  }
  return value;
}

/** A hold as it would be typed. */
export function typedHold(name: keyof Holds, held: number | null): string {
  return held === null ? 'any' : shortNumber(holdUnits[name].sign * held);
}

/** What is left of a tone (dB) as how much is off it, as it is asked for. */
export function offText(left: number): string {
  return shortNumber(left === 0 ? 0 : -left);
}

/** What a setup comes to with one pack, a clause each. `toneText`: how the loudest tone is named. */
export function readingClauses(
  { delay, noise, tones, phaseMargin, gainMargin }: ProposalReading,
  toneText: (title: string) => string,
): readonly string[] {
  const [loudest] = [...tones].sort((one, other) => other.left - one.left);
  return [
    `${shortNumber(delay)} ms of delay`,
    `${shortNumber(noise)} % of noise`,
    ...(loudest === undefined ? [] : [`${offText(loudest.left)} dB off ${toneText(loudest.title)}`]),
    ...(phaseMargin === null ? [] : [`phase margin ${shortNumber(phaseMargin)} deg`]),
    ...(gainMargin === null ? [] : [`gain margin ${shortNumber(gainMargin)}`]),
  ];
}

/** What is asked for, as a list of clauses. */
export function heldText({ toneLeft, phaseMargin, gainMargin, minutes }: Holds): string {
  const clauses = [
    toneLeft === null ? null : `at least ${offText(toneLeft)} dB off every motor tone`,
    phaseMargin === null ? null : `a phase margin of ${shortNumber(phaseMargin)} deg`,
    gainMargin === null ? null : `a gain margin of ${shortNumber(gainMargin)}`,
    minutes === null ? null : `${shortNumber(minutes)} min hovering until it is time to land`,
  ].filter((clause) => clause !== null);
  return clauses.length === 0 ? 'that no loop swings' : clauses.join(', ');
}
