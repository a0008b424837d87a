import { canBeConfirmed, likelyScale, settingKey } from '../../board/learn/confirm';
import { proposeParameters } from '../../board/learn/propose';
import type { LearnedSetting, LearnedShape } from '../../board/learn/shape';
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
  readonly proposals: readonly ToldProposal[];
}

export interface ToldProposal {
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

export function learned(shape: LearnedShape, catalog: Catalog): Learned {
  const { settings, understood, line, lines } = shape;
  const unknown = lines.filter(({ kind }) => kind === 'unknown').length;
  const share = `${(100 * understood).toFixed(understood < 1 && understood > 0.99 ? 1 : 0)} %`;
  return {
    summary:
      line === null
        ? 'No line of this text looks like a setting.'
        : `${settings.length} settings were found; a settings line reads ${line}. ${share} of the lines were understood, ${unknown} were not.`,
    line,
    rows: settings.map((setting) => rowOf(setting, catalog)),
  };
}

function rowOf(setting: LearnedSetting, catalog: Catalog): LearnedRow {
  const { group, name, value } = setting;
  const proposals = proposeParameters(setting, catalog)
    .filter(({ parameter }) => canBeConfirmed(catalog, parameter))
    .slice(0, mostProposals)
    .map(({ parameter, reason }) => ({
      parameter,
      title: catalog.parameters.get(parameter)?.parameter.title ?? '',
      meaning: meaningOf(setting, parameter, catalog),
      reason,
    }));
  return { key: settingKey(setting), group, name, value, proposals };
}

/** `65` of an idle share counted in tenths is `6.5 %`. */
function meaningOf({ value, look }: LearnedSetting, name: string, catalog: Catalog): string {
  const found = catalog.parameter(name.replace(/<[a-z]+>/, 'captured'));
  if (found === undefined || look !== 'number') return value;
  const { parameter } = found;
  if (parameter.kind === 'flag') return value === '1' ? 'on' : 'off';
  if (parameter.kind !== 'quantity' && parameter.kind !== 'range') return value;
  const number = Number(value.replace(',', '.'));
  const told = plainNumber(number / likelyScale(found, number));
  return parameter.unit === '' ? told : `${told} ${parameter.unit}`;
}
