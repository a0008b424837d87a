import type { Level } from '../catalog/model/check';
import { replacementText } from '../catalog/replacements';
import type { Finding } from '../checks/report/finding';
import { listed } from '../checks/report/listed';
import { countByLevel, levels } from '../checks/report/order';
import { asScript, type Renderer } from '../checks/report/render';
import type { Craft } from '../craft/craft';
import { notLookedAt, type ReadAs } from '../craft/read-as';
import type { NotKnown } from './not-known';
import { type Target, targetOf } from './target';
import type { PackColumn } from './which-pack';

/** Part 1: what was found, what was accepted, what was assumed. */
export interface CanItFly {
  readonly id: 'can-it-fly';
  readonly title: string;
  readonly answer: string;
  /** What was not looked at, since the script is no whole craft; null: all was. */
  readonly unchecked: string | null;
  /** Figures that can't be computed, and what would make them known; empty for what is no whole craft. */
  readonly notKnown: readonly NotKnown[];
  readonly counts: Readonly<Record<Level, number>>;
  readonly accepted: number;
  /** The worst first. */
  readonly findings: readonly SheetFinding[];
  /** How many more there are than shown. */
  readonly leftOut: number;
  /** What the figures had to assume, in words: "idle 6 %". */
  readonly assumed: readonly string[];
  /** What files of the workspace have in place of what is built in, a sentence each. */
  readonly replaced: readonly string[];
  /** What was not checked, and who decides: always there. */
  readonly caution: string;
}

export interface SheetFinding {
  readonly id: string;
  readonly level: Level;
  readonly message: string;
  readonly advice: string;
  readonly accepted: string | null;
  readonly pack: string | null;
  readonly target: Target;
}

const mostShown = 60;

/** What was computed of a craft, and what could not be. */
interface ComputedCraft {
  readonly packs: readonly PackColumn[];
  readonly notKnown: readonly NotKnown[];
}

export function canItFly(
  craft: Craft,
  findings: readonly Finding[],
  { packs, notKnown }: ComputedCraft,
  renderer = asScript,
): CanItFly {
  const ranked = levels.flatMap((level) => findings.filter((finding) => finding.level === level));
  const accepted = findings.filter((finding) => finding.accepted !== null).length;
  const counts = countByLevel(findings);
  const replaced = craft.catalog.replacements.map(replacementText);
  return {
    id: 'can-it-fly',
    title: 'Can it fly?',
    answer: answer(craft.readAs(), counts, accepted, replaced.length),
    unchecked: notLookedAt(craft.readAs()),
    notKnown,
    counts,
    accepted,
    findings: ranked.slice(0, mostShown).map((finding) => sheetFinding(finding, renderer)),
    leftOut: Math.max(0, ranked.length - mostShown),
    assumed: assumptions(packs),
    replaced,
    caution:
      'Checks see the script, not the craft. Propellers off at the bench; the makers’ data, local rules and your own test hover decide.',
  };
}

function answer(
  readAs: ReadAs,
  counts: Readonly<Record<Level, number>>,
  accepted: number,
  replaced: number,
): string {
  const parts = [
    counts['must-fix'] > 0 ? `${counts['must-fix']} to mend` : nothingToMend[readAs],
    ...(counts.risk > 0 ? [counts.risk === 1 ? '1 risk' : `${counts.risk} risks`] : []),
    ...(accepted > 0 ? [`${accepted} accepted`] : []),
    ...(replaced > 0 ? [`${replaced} replaced by the workspace`] : []),
  ];
  return parts.join(', ');
}

/** That nothing was found says little where little was looked at. */
const nothingToMend: Readonly<Record<ReadAs, string>> = {
  whole: 'nothing found to mend',
  part: 'nothing found to mend in this part',
  incomplete: 'nothing found to mend in what could be read',
  empty: 'nothing written yet',
};

function sheetFinding(finding: Finding, renderer: Renderer): SheetFinding {
  return {
    id: finding.check.id,
    level: finding.level,
    message: renderer.message(finding),
    advice: renderer.advice(finding),
    accepted: finding.accepted,
    pack: finding.pack,
    target: targetOf(finding.place),
  };
}

/** What was assumed with some packs alone names them. */
function assumptions(columns: readonly PackColumn[]): readonly string[] {
  const all = new Map<string, string[]>();
  for (const { view, figures } of columns) {
    const pack = view.pack ?? '';
    // Many figures share a list.
    const lists = new Set<readonly string[]>();
    for (const { assumed } of figures.values()) lists.add(assumed);
    for (const texts of lists)
      for (const text of texts) {
        const packs = all.get(text);
        if (packs === undefined) all.set(text, [pack]);
        else if (packs.at(-1) !== pack) packs.push(pack);
      }
  }
  const ofAll = [...all].filter(([, packs]) => packs.length === columns.length).map(([text]) => text);
  const ofSome = [...all].filter(([, packs]) => packs.length < columns.length);
  return [
    ...ofAll,
    ...columns.flatMap(({ view: { pack } }) =>
      ofSome
        .filter(([, packs]) => packs[0] === pack)
        .map(([text, packs]) => `with ${packs.length === 1 ? 'pack' : 'packs'} ${listed(packs)}: ${text}`),
    ),
  ];
}
