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

const bracketed = /[[({]([^\])}]*)[\])}]/g;

export function saidHeading(heading: string, { units }: RecordingColumns): SaidHeading {
  const inBrackets = [...heading.matchAll(bracketed)].map(([, inside = '']) => inside.trim());
  const marked = inBrackets.filter((text) => /[a-z%°]/i.test(text) && !/^[xyz]$/i.test(text));
  // A range says how numbers count, and numbers nothing.
  const plain = heading.replace(/[[({]\s*[-+.\d]+\s*(?:-|–|to|…|\.\.)\s*[-+.\d]+\s*[\])}]/g, ' ');
  const bare = plain.replace(bracketed, (_all, inside: string) =>
    marked.includes(inside.trim()) ? ' ' : ` ${inside} `,
  );
  const tokens = wordsIn(bare);
  const unitOf = (text: string) => units.find(({ said }) => said.includes(text.toLowerCase().trim()))?.unit;
  const inMark = marked.map((text) => unitOf(text.replaceAll('µ', 'u').replaceAll('μ', 'u')));
  const unit = inMark.find((one) => one !== undefined) ?? null;
  const last = tokens.at(-1)?.toLowerCase() ?? '';
  const atEnd = unit === null && marked.length === 0 && tokens.length > 1 ? unitOf(last) : undefined;
  const words = tokens.map((token) => token.toLowerCase()).filter((token) => !/^\d+$/.test(token));
  return {
    words,
    numbers: tokens.filter((token) => /^\d+$/.test(token)).map(Number),
    unit: unit ?? atEnd ?? null,
    unknownUnit: unit === null ? (marked[0] ?? null) : null,
  };
}

/** `SampleTimeFine` is sample, time, fine; `accX` acc, x; `rpm1` rpm, 1; `mot_FL` mot, FL. */
function wordsIn(text: string): readonly string[] {
  return text.match(/[A-Z]+(?![a-z])|[A-Z]?[a-zäöü]+|\d+/g) ?? [];
}

/** Whether these words stand in the heading, one behind the other. */
export function says({ words }: SaidHeading, stem: string): boolean {
  const wanted = stem.split(' ');
  return words.some((_, at) => wanted.every((one, ahead) => words[at + ahead] === one));
}
