import type { RecordingColumns } from '../../catalog/model/recording-columns';

/** What a heading says. */
export interface SaidHeading {
  /** Its words in small letters, cut at marks, capitals and digits, without its unit. */
  readonly words: readonly string[];
  /** Numbers in it: of a motor, of a vector's part. */
  readonly numbers: readonly number[];
  /** The unit as scripts write it; null where it says none or one that nobody knows. */
  readonly unit: string | null;
  /** As it is printed, where a unit is marked as one and not known. */
  readonly unknownUnit: string | null;
}

export function saidHeading(heading: string, { units }: RecordingColumns): SaidHeading {
  const parts = partsOf(heading.replace(/[\u00b5\u03bc]/g, 'u'));
  const marked = parts.filter(({ isMarked, text }) => isMarked && isUnitText(text)).map(({ text }) => text);
  const bare = parts.filter(({ isMarked, text }) => !isMarked || !(isUnitText(text) || isRange(text)));
  const tokens = bare.flatMap(({ text }) => wordsIn(text));
  const unitOf = (text: string) => units.find(({ said }) => said.includes(text.toLowerCase()))?.unit;
  const unit = marked.map(unitOf).find((one) => one !== undefined) ?? null;
  const last = tokens.at(-1) ?? '';
  // `gyro roll deg/s`: the unit as a whole before its last word.
  const [, tail = ''] = /[\s_]([^\s_]+)$/u.exec(bare.at(-1)?.text ?? '') ?? [];
  const atEnd = marked.length === 0 && tokens.length > 1 ? (unitOf(tail) ?? unitOf(last)) : undefined;
  return {
    words: tokens.filter((token) => !isDigit(token[0] ?? '')).map((token) => token.toLowerCase()),
    numbers: tokens.filter((token) => isDigit(token[0] ?? '')).map(Number),
    unit: unit ?? atEnd ?? null,
    unknownUnit: unit === null ? (marked[0] ?? null) : null,
  };
}

interface HeadingPart {
  readonly text: string;
  /** Whether it stands in brackets. */
  readonly isMarked: boolean;
}

/** What stands in brackets and what does not, in order. */
function partsOf(heading: string): readonly HeadingPart[] {
  const parts: HeadingPart[] = [];
  let from = 0;
  let isMarked = false;
  for (let at = 0; at <= heading.length; at += 1) {
    const character = heading[at] ?? '';
    const ends = isMarked ? ')]}' : '([{';
    if (at < heading.length && !ends.includes(character)) continue;
    parts.push({ text: heading.slice(from, at).trim(), isMarked });
    from = at + 1;
    isMarked = !isMarked;
  }
  return parts;
}

/** `rad/s`, `%`; not the axis in `accel[x]`. */
function isUnitText(text: string): boolean {
  return /[a-z%\u00b0]/i.test(text.replace(/\bto\b/g, '')) && !/^[xyz]$/i.test(text);
}

/** `0-1`, `1000 to 2000`: it says how numbers count, and its own numbers nothing. */
function isRange(text: string): boolean {
  return (text.match(/\d+/g)?.length ?? 0) > 1 && !isUnitText(text);
}

/** `SampleTimeFine` is Sample, Time, Fine; `accX` acc, X; `rpm1` rpm, 1; `mot_FL` mot, FL; `IMUGyro` IMU, Gyro. */
function wordsIn(text: string): readonly string[] {
  const words: string[] = [];
  let before = 'mark';
  for (const [at, character] of [...text].entries()) {
    const kind = kindOf(character);
    const last = words.length - 1;
    // A capital belongs to the small letters behind it.
    const begins = kind === 'capital' && (before !== 'capital' || kindOf(text[at + 1] ?? '') === 'small');
    const goesOn = kind === before || (kind === 'small' && before === 'capital');
    if (kind !== 'mark' && goesOn && !begins) words[last] = `${words[last] ?? ''}${character}`;
    else if (kind !== 'mark') words.push(character);
    before = kind;
  }
  return words;
}

function kindOf(character: string): 'capital' | 'small' | 'digit' | 'mark' {
  if (isDigit(character)) return 'digit';
  if (/\p{Lu}/u.test(character)) return 'capital';
  return /\p{L}/u.test(character) ? 'small' : 'mark';
}

function isDigit(character: string): boolean {
  return character >= '0' && character <= '9' && character !== '';
}

/** Whether these words stand in the heading, one behind the other. */
export function says({ words }: SaidHeading, stem: string): boolean {
  const wanted = stem.split(' ');
  return words.some((_, at) => wanted.every((one, ahead) => words[at + ahead] === one));
}
