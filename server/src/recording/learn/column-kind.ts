import type { ColumnKind, RecordingColumns } from '../../catalog/model/recording-columns';
import { type SaidHeading, says } from './heading-words';

/** A kind that a heading speaks of. */
export interface SpokenKind {
  readonly kind: ColumnKind;
  /** Whether it says other things as well. */
  readonly isWeak: boolean;
  /** The word that says it. */
  readonly word: string;
}

/** The kinds that a heading may speak of, the likeliest first. */
export function kindsOf(said: SaidHeading, { kinds }: RecordingColumns): readonly SpokenKind[] {
  const found = kinds.flatMap((kind) => spoken(kind, said) ?? []);
  const strong = found.filter(({ isWeak }) => !isWeak);
  const known = strong.filter(({ kind }) => kind.kind !== 'other');
  if (known.length > 0) return known.slice(0, 1);
  return strong.length > 0 ? strong.slice(0, 1) : found;
}

function spoken(kind: ColumnKind, said: SaidHeading): SpokenKind | null {
  if (kind.without.some((word) => says(said, word))) return null;
  if (kind.with.length > 0 && !kind.with.some((word) => says(said, word))) return null;
  if (isNumbered(kind) && said.numbers.length === 0 && armOf(said) === null) return null;
  const strong = kind.words.find((word) => says(said, word));
  if (strong !== undefined) return { kind, isWeak: false, word: strong };
  // There is one throttle and one pack: a number beside a word that says so loosely says something else.
  const isOne = ['throttle', 'voltage', 'current'].includes(kind.kind);
  const weak = isOne && said.numbers.length > 0 ? undefined : kind.weak.find((word) => says(said, word));
  return weak === undefined ? null : { kind, isWeak: true, word: weak };
}

export function isNumbered({ kind }: ColumnKind): boolean {
  return kind === 'motor' || kind === 'speed';
}

/** The arm that letters speak of, in two languages: front or back, left or right. */
export function armOf({ words }: SaidHeading): string | null {
  const arm = words.find((word) => /^(?:[fbrvh][lr]|[lr][fbvh])$/.test(word));
  return arm ?? null;
}
