import type { Catalog } from '../../catalog/catalog';
import type { BoardProfile, BoardSetting, BoardText } from '../../catalog/model/board-profile';
import { type Confirmed, confirmedMeanings, type Meant, settingKey } from './confirm';
import type { LearnedSetting, LearnedShape } from './shape';

/** A board profile as its file holds it, to be filled in further by its author. */
export interface ProfileSkeleton {
  readonly profile: BoardProfile;
  /** Settings that became parameters of the catalogue, by their keys; of the others nobody has said what they mean. */
  readonly mapped: readonly string[];
}

/**
 * A profile from what was learned of a listing: every setting with what the listing states of it, and with its
 * meaning where that was confirmed. No listing tells the hardware, so none is told.
 */
export function profileSkeleton(
  shape: LearnedShape,
  name: string,
  confirmed: Confirmed,
  catalog: Catalog,
): ProfileSkeleton | null {
  if (shape.line === null) return null;
  const meanings = confirmedMeanings(shape.settings, confirmed, catalog);
  const settings = shape.settings.map((setting) => rowOf(setting, meanings.get(settingKey(setting))));
  return { profile: { name, text: textOf(shape, shape.line), settings }, mapped: [...meanings.keys()] };
}

function rowOf({ group, name, remark }: LearnedSetting, meant: Meant | undefined): BoardSetting {
  return {
    ...(group === '' ? {} : { group }),
    name,
    ...(remark?.range == null ? {} : { range: [...remark.range] }),
    ...(remark?.words == null ? {} : { words: [...remark.words] }),
    ...meant,
  };
}

function textOf(shape: LearnedShape, form: string): BoardText {
  const { heading, comment, remarks, decimal, quote } = shape;
  return {
    forms: {
      container: 'lines',
      lines: [{ form }],
      beside: remarks.map((mark) => `${mark} {remark}`),
      headings: heading === null ? [] : [heading],
      closers: [],
      indent: 'none',
      comments: [comment],
      opening: [],
      closing: [],
      prompts: [],
      decimal,
    },
    ...(quote === '' ? {} : { quote }),
    flags: flagsOf(shape.settings),
  };
}

/** The spellings of on and off that the listing uses. */
function flagsOf(settings: readonly LearnedSetting[]): { readonly on: string; readonly off: string } {
  const pairs = [
    ['on', 'off'],
    ['yes', 'no'],
    ['true', 'false'],
    ['lit', 'dark'],
    ['enabled', 'disabled'],
  ] as const;
  const said = new Set(settings.filter(({ look }) => look === 'flag').map(({ value }) => value));
  const [on, off] = pairs.find(([one, other]) => said.has(one) || said.has(other)) ?? pairs[0];
  return { on, off };
}
