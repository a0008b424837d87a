import { canBeConfirmed, likelyScale } from '../../board/learn/confirm';
import { type LearnedSetting, learnedSettings, settingName } from '../../board/learn/learned-settings';
import { proposeParameters } from '../../board/learn/propose';
import type { Listing } from '../../board/listing/listing';
import type { Catalog } from '../../catalog/catalog';
import { plainNumber } from '../../units/number-text';

/** A setting of a captured listing, with what it may stand for. */
export interface LearnedRow {
  /** `calm/first-cut` */
  readonly key: string;
  readonly group: string;
  readonly name: string;
  /** In the board's spelling. */
  readonly value: string;
  /** The likeliest first; none of them is taken unless a person says so. */
  readonly proposals: readonly DescribedProposal[];
}

export interface DescribedProposal {
  readonly parameter: string;
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

const mostProposals = 5;

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
    rows: learnedSettings(listing).map((setting) => rowOf(setting, catalog)),
  };
}

function rowOf(setting: LearnedSetting, catalog: Catalog): LearnedRow {
  const { groups, name, value } = setting;
  const group = groups.join('/');
  const proposals = proposeParameters(setting, catalog)
    .filter(({ parameter }) => canBeConfirmed(catalog, parameter))
    .slice(0, mostProposals)
    .map(({ parameter, reason }) => ({
      parameter,
      title: catalog.parameters.get(parameter)?.parameter.title ?? '',
      meaning: meaningOf(setting, parameter, catalog),
      reason,
    }));
  return { key: settingName(setting), group, name, value, proposals };
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
