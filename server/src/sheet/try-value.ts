import type { FoundParameter } from '../catalog/catalog';
import type { Finding } from '../checks/report/finding';
import type { Craft } from '../craft/craft';
import { CraftView } from '../craft/view';
import type { DocumentEdit } from '../language/document';
import { parseQuantity } from '../units/quantity';
import { fromBase, unitOf } from '../units/unit';
import { askedFirst, isVariant } from './asked-first';
import { type FindingChanges, findingChanges } from './compare/finding-changes';
import { type MovedFigure, movedFigures } from './compare/moved-figures';
import { type Target, targetOfPath } from './target';
import { settingEdits, whatIf } from './what-if';

/** A setting that other values can be tried for, with a pack in view. */
export interface Tryable {
  readonly path: string;
  readonly title: string;
  /** What it holds now, as a script writes it; null where nothing is set or assumed. */
  readonly now: string | null;
  readonly isSet: boolean;
  readonly target: Target | null;
  readonly by: BySlider | ByChoice;
}

/** Numbers, all in the unit. */
export interface BySlider {
  readonly kind: 'slider';
  readonly unit: string;
  readonly now: number | null;
  readonly usual: readonly [number, number];
  readonly range: readonly [number, number];
  readonly step: number;
}

export interface ByChoice {
  readonly kind: 'choice';
  readonly choices: readonly string[];
}

/** What would be if a setting held something else. */
export interface TriedValue extends FindingChanges {
  /** Why it can't be written, as the script would say it; null if it can. */
  readonly refusal: string | null;
  /** What moves, for every pack of the craft: what gets worse first; of a load and the cold what is asked first. */
  readonly moved: readonly MovedFigure[];
  readonly packs: readonly (string | null)[];
  /** What writing it into the script takes. */
  readonly edits: readonly DocumentEdit[];
}

/**
 * The setting of a path, with the pack in view where a figure's input leaves the pack open; null where nothing can
 * be tried: the parameter is not known, is a text, a curve …
 */
export function tryable(craft: Craft, pack: string | null, wanted: string): Tryable | null {
  const path = pack === null ? wanted : wanted.replace(/^pack\.<name>\./, `pack.${pack}.`);
  const found = craft.catalog.parameter(path);
  if (found === undefined || path.includes('<')) return null;
  const view = new CraftView(craft, pack);
  const value = view.value(path);
  const by = controlOf(
    craft,
    found,
    value?.kind === 'quantity' || value?.kind === 'count' ? value.value : null,
  );
  if (by === null) return null;
  return {
    path,
    title: found.parameter.title,
    now: view.written(path),
    isSet: view.isSet(path),
    target: targetOfPath(view, path),
    by,
  };
}

/** What a value written as in a script would do; null where the craft has no line that can take it. */
export function tryValue(
  craft: Craft,
  pack: string | null,
  path: string,
  to: string,
  findings: readonly Finding[],
  check: (craft: Craft) => readonly Finding[],
): TriedValue | null {
  if (/[\r\n]/.test(to)) return null;
  const edits = settingEdits(craft, pack, path, to);
  if (edits === null) return null;
  const trial = whatIf(craft, edits);
  const changes = findingChanges(findings, check(trial));
  const packs = craft.packsOrNone();
  const wrong = trial.setting(path, pack)?.problems.find(({ id }) => levelOf(craft, id) === 'must-fix');
  const gained = wrong === undefined ? undefined : changes.gained.find(({ id }) => id === wrong.id);
  const moved = movedFigures(
    craft,
    trial,
    packs.map((one) => [one, one]),
  );
  return {
    ...changes,
    refusal: wrong === undefined ? null : (gained?.message ?? `${to} is not a value that ${path} takes.`),
    moved: isVariant(path) ? askedFirst(moved).flat() : moved,
    packs,
    edits,
  };
}

function levelOf({ catalog }: Craft, id: string): string | undefined {
  return catalog.check(id)?.level;
}

function controlOf(craft: Craft, found: FoundParameter, now: number | null): BySlider | ByChoice | null {
  const { parameter } = found;
  switch (parameter.kind) {
    case 'quantity': {
      const unit = unitOf(parameter.unit);
      const inUnit = (text: string) => fromBase(parseQuantity(text)?.value ?? Number.NaN, unit);
      const usual = pair(parameter.usual.map(inUnit));
      const shown = now === null ? null : tidy(fromBase(now, unit));
      return {
        kind: 'slider',
        unit: parameter.unit,
        now: shown,
        usual,
        range: pair(parameter.range.map(inUnit)),
        step: stepOf(usual),
      };
    }
    case 'count':
      return { kind: 'slider', unit: '', now, usual: parameter.usual, range: parameter.range, step: 1 };
    case 'flag':
      return { kind: 'choice', choices: ['on', 'off'] };
    case 'word': {
      const words = craft.words(found);
      return words === null || words.length < 2 ? null : { kind: 'choice', choices: words };
    }
    default:
      return null;
  }
}

function pair([low = 0, high = 0]: readonly number[]): readonly [number, number] {
  return [tidy(low), tidy(high)];
}

/** Without the trace of binary arithmetic. */
function tidy(value: number): number {
  return Number(value.toPrecision(12));
}

/** A round step, about two hundred of them in the usual range. */
function stepOf([low, high]: readonly [number, number]): number {
  const rough = (high - low) / 200;
  if (!(rough > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(rough));
  const factor = [1, 2, 5, 10].find((one) => one * power >= rough) ?? 10;
  return tidy(factor * power);
}
