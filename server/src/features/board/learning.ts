import { conversionsOf } from '../../board/learn/convert/conversions';
import type { Conversion, Ground, TakenAs } from '../../board/learn/convert/taken';
import { groundOf } from '../../board/learn/learned-profile';
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
import { groupCount } from './group-count';

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
  /** How its value becomes that; what belongs together is counted alike. */
  readonly conversion: Conversion | null;
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
  const groups = groupCount(settings);
  const found = `${settings.length} settings in ${groups === 1 ? 'one group' : `${groups} groups`} were found.`;
  return {
    summary:
      refused ??
      (line === null
        ? 'No line of this text looks like a setting.'
        : `${found} ${share} of the lines were understood, ${left.length} ${left.length === 1 ? 'was' : 'were'} not.`),
    line,
    rows: rowsOf(listing, catalog),
  };
}

function rowsOf(listing: Listing, catalog: Catalog): readonly LearnedRow[] {
  const all = learnedSettings(listing);
  const proposed = proposals(all, catalog);
  const ground = groundOf(listing, all, catalog);
  const taken = all.map((setting, index): TakenAs | null => {
    const proposal = proposed[index] ?? null;
    return proposal === null ? null : takenAs(setting, proposal);
  });
  const conversions = conversionsOf(
    taken.flatMap((one) => one ?? []),
    ground,
  );
  return all.map((setting, index) => {
    const first = taken[index] ?? null;
    const conversion = first === null ? null : (conversions.get(first) ?? null);
    return rowOf(setting, proposed[index] ?? null, conversion, ground);
  });
}

function takenAs(setting: LearnedSetting, one: Candidate): TakenAs {
  return { setting, means: meansOf(one), ...(one.part === null ? {} : { as: one.part }) };
}

/** `conversion`: of its first proposal, found together with those of all others. */
function rowOf(
  setting: LearnedSetting,
  proposal: Proposal | null,
  conversion: Conversion | null,
  ground: Ground,
): LearnedRow {
  const { groups, name, value } = setting;
  const rivals = proposal?.rivals ?? [];
  const alone = (one: Candidate) => {
    const taken = takenAs(setting, one);
    return described(setting, one, conversionsOf([taken], ground).get(taken) ?? null, ground.catalog);
  };
  return {
    key: settingName(setting),
    group: groups.join('/'),
    name,
    value,
    sureness: proposal?.sureness ?? null,
    proposals: [
      ...(proposal === null ? [] : [described(setting, proposal, conversion, ground.catalog)]),
      ...rivals.map(alone),
    ],
  };
}

function described(
  { value }: LearnedSetting,
  one: Candidate,
  conversion: Conversion | null,
  catalog: Catalog,
): DescribedProposal {
  const { parameter, part, why } = one;
  return {
    parameter: meansOf(one),
    part,
    family: familyOf(parameter),
    title: catalog.parameters.get(parameter)?.parameter.title ?? '',
    meaning: conversion?.preview.quantity ?? value,
    reason: why,
    conversion,
  };
}
