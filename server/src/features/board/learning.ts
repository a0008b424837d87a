import { likelyScale } from '../../board/learn/confirm';
import { type LearnedSetting, learnedSettings, settingName } from '../../board/learn/learned-settings';
import {
  type Candidate,
  familyOf,
  meansOf,
  type Proposal,
  type Sureness,
} from '../../board/learn/propose/proposal';
import { proposals } from '../../board/learn/propose/propose';
import type { Listing } from '../../board/listing/listing';
import type { Catalog } from '../../catalog/catalog';
import type { PartHeld } from '../../catalog/model/board-profile';
import { plainNumber } from '../../units/number-text';

/** A setting of a captured listing, with what it may stand for. */
export interface LearnedRow {
  /** `calm/first-cut` */
  readonly key: string;
  readonly group: string;
  readonly name: string;
  /** In the board's spelling. */
  readonly value: string;
  /** How sure the first is; null where nothing is near. */
  readonly sureness: Sureness | null;
  /** The likeliest first; none of them is taken unless a person says so. */
  readonly proposals: readonly DescribedProposal[];
}

export interface DescribedProposal {
  /** The path of a script: `switch.arm.on`; a pack stays open. */
  readonly parameter: string;
  /** Which part of it, where several settings hold it between them. */
  readonly part: PartHeld | null;
  /** What is counted alike: `control.*.proportional`. */
  readonly family: string;
  readonly title: string;
  /** What the value would mean as a script writes it. */
  readonly meaning: string;
  readonly reason: string;
}

/** What was understood of a listing, for a person to confirm. */
export interface Learned {
  /** A sentence with the counts. */
  readonly summary: string;
  /** Its settings line as a template; null: nothing was understood. */
  readonly line: string | null;
  readonly rows: readonly LearnedRow[];
}

export function learned(listing: Listing, catalog: Catalog): Learned {
  const { settings, understood, left, forms, refused } = listing;
  const share = `${(100 * understood).toFixed(understood < 1 && understood > 0.99 ? 1 : 0)} %`;
  const line = settings.length === 0 ? null : (forms.lines[0]?.form ?? forms.container);
  const groups = new Set(settings.map((one) => JSON.stringify(one.groups))).size;
  const found = `${settings.length} settings in ${groups === 1 ? 'one group' : `${groups} groups`} were found.`;
  return {
    summary:
      refused ??
      (line === null
        ? 'No line of this text looks like a setting.'
        : `${found} ${share} of the lines were understood, ${left.length} were not.`),
    line,
    rows: rowsOf(listing, catalog),
  };
}

function rowsOf(listing: Listing, catalog: Catalog): readonly LearnedRow[] {
  const all = learnedSettings(listing);
  const proposed = proposals(all, catalog);
  return all.map((setting, index) => rowOf(setting, proposed[index] ?? null, catalog));
}

function rowOf(setting: LearnedSetting, proposal: Proposal | null, catalog: Catalog): LearnedRow {
  const { groups, name, value } = setting;
  const candidates = proposal === null ? [] : [proposal, ...proposal.rivals];
  return {
    key: settingName(setting),
    group: groups.join('/'),
    name,
    value,
    sureness: proposal?.sureness ?? null,
    proposals: candidates.map((one) => described(setting, one, catalog)),
  };
}

function described(setting: LearnedSetting, one: Candidate, catalog: Catalog): DescribedProposal {
  const { parameter, part, why } = one;
  return {
    parameter: meansOf(one),
    part,
    family: familyOf(parameter),
    title: catalog.parameters.get(parameter)?.parameter.title ?? '',
    meaning: meaningOf(setting, parameter, catalog),
    reason: why,
  };
}

/** `65` of an idle share counted in tenths is `6.5 %`. */
function meaningOf({ value, number, look }: LearnedSetting, name: string, catalog: Catalog): string {
  const found = catalog.parameter(name.replace(/<[a-z]+>/, 'captured'));
  if (found === undefined || look !== 'number') return value;
  const { parameter } = found;
  if (parameter.kind === 'flag') return value === '1' ? 'on' : 'off';
  if (parameter.kind !== 'quantity' && parameter.kind !== 'range') return value;
  const told = plainNumber(number / likelyScale(found, number));
  return parameter.unit === '' ? told : `${told} ${parameter.unit}`;
}
