import type { BoardSetting } from '../../catalog/model/board-profile';
import type { ListedSetting, Stated } from '../listing/listing';

/** What a line says beside its value, as far as somebody knows what it should say there. */
export type SaidBeside = Partial<Omit<Stated, 'at'>>;

/** Two texts for a person: what stood beside a value, and what stands there now. */
export interface BesideChange {
  readonly was: string;
  readonly is: string;
}

/**
 * What a capture says otherwise beside a value: a range that is none but a part of the value, such as an arm switch's,
 * would else change unseen. `null` where it says what was known.
 */
export function besideChange(known: SaidBeside, { stated }: ListedSetting): BesideChange | null {
  const changed = fields.flatMap((field) => {
    const was = known[field];
    const is = stated?.[field] ?? null;
    return was === undefined || textOf(was) === textOf(is) ? [] : [{ was: textOf(was), is: textOf(is) }];
  });
  if (changed.length === 0) return null;
  return { was: joined(changed.map(({ was }) => was)), is: joined(changed.map(({ is }) => is)) };
}

/** What a captured text said; it knows all of it. */
export function saidBeside({ stated }: ListedSetting): SaidBeside {
  return stated ?? { range: null, words: null, default: null, unit: null, remark: null };
}

/** The same of a line with another value by now: a remark with numbers may say what the value comes to, or was. */
export function saidOfAnother(setting: ListedSetting): SaidBeside {
  const { remark, ...said } = saidBeside(setting);
  return /\d/.test(remark ?? '') ? said : { ...said, remark: remark ?? null };
}

/** What a profile's row says; what it leaves out may be anything, and so may a listing that says nothing. */
export function saidInRow(
  { range, words, default: usual, unit }: BoardSetting,
  { stated }: ListedSetting,
): SaidBeside {
  if (stated === null) return {};
  return {
    ...(range === undefined ? {} : { range: { low: range[0], high: range[1] } }),
    ...(words === undefined ? {} : { words }),
    ...(usual === undefined ? {} : { default: usual }),
    ...(unit === undefined ? {} : { unit }),
  };
}

const fields = ['range', 'words', 'default', 'unit', 'remark'] as const;

/** Spaces of another kind, which come with a text that went through a browser, say nothing else. */
function textOf(said: SaidBeside[(typeof fields)[number]]): string {
  if (said === null || said === undefined) return '';
  if (typeof said === 'string') return said.replace(/\s+/g, ' ');
  return 'low' in said ? `${said.low} to ${said.high}` : said.join(', ');
}

function joined(texts: readonly string[]): string {
  const all = texts.filter((text) => text !== '');
  return all.length === 0 ? 'nothing' : all.join('; ');
}
