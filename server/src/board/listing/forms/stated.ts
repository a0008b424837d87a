import type { Stated, Stretch } from '../listing';
import type { DecimalMark } from '../number-look';
import { rangeIn, wordsApart, wordsIn } from '../range-and-words';
import type { Remark } from '../remark';
import { textWithoutQuotes } from '../text/characters';
import type { ListingLine } from '../text/line';
import type { Field } from './template';

/** What the parts say together of a value; null where there are none. */
export function statedOf(
  line: ListingLine,
  parts: readonly (readonly [Field, Stretch])[],
  value: string,
  { mark, readRemark }: { readonly mark: DecimalMark; readonly readRemark: (remark: string) => Remark },
): Stated | null {
  const [first] = parts;
  if (first === undefined) return null;
  const textOf = (field: Field) => {
    const found = parts.find(([one]) => one === field)?.[1];
    return found === undefined ? null : textWithoutQuotes(line.text.slice(found.start, found.end));
  };
  const remark = parts
    .filter(([field]) => field === 'remark')
    .map(([, { start, end }]) => line.text.slice(start, end));
  const said = remark.map(readRemark);
  const [low, high] = [textOf('low'), textOf('high')];
  const range = rangeIn(textOf('range') ?? '', mark);
  const places = parts.map(([, at]) => line.at(at.start, at.end));
  const unsaid = remark.filter((_, index) => said[index]?.isAll !== true);
  return {
    range:
      low !== null && high !== null
        ? { low, high }
        : range !== null
          ? { low: range.low, high: range.high }
          : (said.find((one) => one.range !== null)?.range ?? null),
    words:
      wordsIn(textOf('words') ?? '') ??
      wordsApart(textOf('words') ?? '', value) ??
      said.find((one) => one.words !== null)?.words ??
      null,
    default: textOf('default') ?? said.find((one) => one.default !== null)?.default ?? null,
    unit: textOf('unit') ?? range?.unit ?? said.find((one) => one.unit !== null)?.unit ?? null,
    remark: unsaid.length === 0 ? null : unsaid.join('; '),
    at: {
      start: Math.min(...places.map(({ start }) => start)),
      end: Math.max(...places.map(({ end }) => end)),
    },
  };
}
