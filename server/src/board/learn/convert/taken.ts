import type { Catalog, FoundParameter } from '../../../catalog/catalog';
import type { Meant, PartHeld } from '../../../catalog/model/board-profile';
import { parameterPath } from '../../meaning/parameter-path';
import type { SpellingManner } from '../../profile/profile';
import type { LearnedSetting } from '../learned-settings';
import type { Confirmation } from '../said';

/** A setting of a listing with what it is taken for. */
export interface TakenAs extends Omit<Confirmation, 'isRole' | 'parts' | 'bits'> {
  readonly setting: LearnedSetting;
  readonly as?: PartHeld;
}

/** A number of a listing with the parameter that it is taken for. */
export interface NumberTaken {
  readonly taken: TakenAs;
  readonly found: FoundParameter;
  /** As it stands there, without its unit. */
  readonly number: number;
}

/** What all settings of a listing share. */
export interface Ground {
  readonly catalog: Catalog;
  /** How the board spells what no row says otherwise. */
  readonly manner: SpellingManner;
}

/** How sure a conversion is: the listing says so; only one way gives usual values; a person has to say. */
export type CountSureness = 'stated' | 'likely' | 'ask';

/** What a value would mean, for a person to look at. */
export interface Preview {
  /** As the board writes it. */
  readonly token: string;
  /** As a script writes it; null: it can't be read so. */
  readonly quantity: string | null;
  /** Why it can't be read, as the end of a sentence. */
  readonly reason: string | null;
  /** What is usual, such as `30 Hz to 1 kHz`; null where nothing is. */
  readonly usual: string | null;
  /** Whether it is usual, only possible, or neither; null where that can't be said. */
  readonly lies: 'usual' | 'possible' | 'outside' | null;
}

/** One way in which a board may count or spell, with what the value comes to. */
export interface WayToCount {
  readonly meant: Pick<Meant, 'counts' | 'spelled'>;
  /** `in Hz`, `in tenths of %`. */
  readonly title: string;
  readonly preview: Preview;
}

/** How the value of a setting becomes what the parameter holds. */
export interface Conversion {
  readonly sureness: CountSureness;
  /** TakenAs unless a person says otherwise; null where that has to be said. */
  readonly meant: Pick<Meant, 'counts' | 'spelled'> | null;
  /** Why, as the end of a sentence. */
  readonly why: string;
  readonly preview: Preview;
  /** The likeliest first; none where words have to be spelled. */
  readonly candidates: readonly WayToCount[];
  /** Whether it can play the part of its parameter with nobody knowing its scale. */
  readonly takesRole: boolean;
}

export function parameterTaken(
  { means }: Pick<TakenAs, 'means'>,
  catalog: Catalog,
): FoundParameter | undefined {
  return catalog.parameter(parameterPath({ means }, null));
}
