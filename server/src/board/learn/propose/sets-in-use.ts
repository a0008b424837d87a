import type { LearnedSetting } from '../learned-settings';

/** Which of several sets of the same settings, such as `profile 1` to `profile 3`, a listing says is in use. */
export interface SetInUse {
  /** Settings of the other sets: what they hold is not what flies. */
  readonly isSpare: (setting: LearnedSetting) => boolean;
  /** For a setting of the set in use, the end of a reason; null for all others. */
  readonly why: (setting: LearnedSetting) => string | null;
}

/** Fewer settings that two groups share are chance. */
const leastShared = 3;

/** Words by which a setting says which one is in use, in three languages; some with endings of their own. */
const inUse = new Set(['active', 'current', 'selected', 'chosen', 'used', 'actif']);
const inUseWithEnding = ['aktiv', 'gewählt'];

function saysWhichIsInUse(name: string): boolean {
  const words = name.toLowerCase().split(/[^\p{L}]+/u);
  return words.some(
    (word, index) =>
      inUse.has(word) ||
      inUseWithEnding.some((stem) => word.startsWith(stem)) ||
      (word === 'in' && words[index + 1] === 'use'),
  );
}

/** Null where no setting says it, or there are no such sets: several filters or ports are all in use at once. */
export function setInUse(settings: readonly LearnedSetting[]): SetInUse | null {
  const all = new Map<string, { readonly groups: readonly string[]; readonly names: Set<string> }>();
  for (const { groups, name } of settings) {
    const key = JSON.stringify(groups);
    const set = all.get(key) ?? { groups, names: new Set() };
    set.names.add(name);
    all.set(key, set);
  }
  for (const selector of settings) {
    if (!saysWhichIsInUse(selector.name) || !Number.isInteger(selector.number)) continue;
    const sets = new Map<string, number>();
    for (const [key, { groups, names }] of all) {
      const number = numberOfSet(groups, selector);
      if (number !== null && names.size >= leastShared) sets.set(key, number);
    }
    const used = [...sets].find(([, number]) => number === selector.number)?.[0];
    const own = used === undefined ? undefined : all.get(used)?.names;
    if (used === undefined || own === undefined) continue;
    const others = [...sets.keys()].filter((key) => key !== used && isAlike(own, all.get(key)?.names));
    if (others.length === 0) continue;
    const why = `“${selector.name}” says that ${String(selector.number)} is in use`;
    return {
      isSpare: ({ groups }) => others.includes(JSON.stringify(groups)),
      why: ({ groups }) => (JSON.stringify(groups) === used ? why : null),
    };
  }
  return null;
}

/** Of `profile 2 "orchard"`, where the setting is an `active profile`, 2. */
function numberOfSet(groups: readonly string[], selector: LearnedSetting): number | null {
  const [, word = '', digits = ''] = /^([^0-9]*)([0-9]+)/.exec(groups.at(-1) ?? '') ?? [];
  const kind = (word.split(/[ _#-]/)[0] ?? '').toLowerCase();
  const about = [...selector.groups, selector.name].join(' ').toLowerCase();
  return /^\p{L}{2,}$/u.test(kind) && digits.length <= 2 && about.includes(kind) ? Number(digits) : null;
}

function isAlike(own: ReadonlySet<string>, other: ReadonlySet<string> | undefined): boolean {
  const shared = [...own].filter((name) => other?.has(name) === true).length;
  return shared >= leastShared && shared >= 0.8 * own.size;
}
