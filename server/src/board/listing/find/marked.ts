import { formsOf, type LineFormData } from '../forms/compiled';
import { partsOfLine } from '../forms/parts-of-line';
import { numberLook } from '../number-look';
import { isAlwaysComment } from './comments';
import type { Sample } from './sample';

/** A mark that some settings have before them, such as those that were changed, and the form of their lines. */
export interface MarkForm {
  readonly mark: string;
  readonly form: LineFormData;
}

const leastShare = 0.6;
const mostWords = 3;

/**
 * Marks that look like those of comments, with settings behind them: `* gyro-rate = 4000` beside `gyro-rate = 4000`.
 * Taken for comments, such settings would be lost without a word.
 */
export function markedAmong(
  comments: readonly Sample[],
  marks: readonly string[],
  main: readonly LineFormData[],
): readonly MarkForm[] {
  const [form] = main;
  if (form === undefined) return [];
  const forms = formsOf([form]);
  return marks.flatMap((mark) => {
    if (isAlwaysComment(mark)) return [];
    const behind = comments.flatMap(({ text }) =>
      text.startsWith(mark) ? [text.slice(mark.length).trimStart()] : [],
    );
    const settings = behind.filter((text) => isSetting(text));
    return settings.length >= leastShare * behind.length
      ? [{ mark, form: { ...form, form: `${mark} ${form.form}` } }]
      : [];
  });

  function isSetting(text: string): boolean {
    const parts = partsOfLine(forms, text);
    return (
      parts.length > 0 &&
      parts.every(({ rest, isLoose }) => {
        const words = text.slice(rest.start, rest.end).split(/\s+/);
        // A mark between name and value, with few words behind it, is seldom a sentence.
        return numberLook(words[0] ?? '') !== null || (!isLoose && words.length <= mostWords);
      })
    );
  }
}
