import type { HandOver } from '../catalog/model/hand-over';
import type { Finding } from '../checks/report/finding';
import { messageOf } from '../checks/report/render';
import type { Craft } from '../craft/craft';
import { fileName } from '../craft/include-path';
import type { ReadAs } from '../craft/read-as';
import { CraftView } from '../craft/view';
import { figureOf, figureSources } from '../figures';
import type { Figure } from '../figures/figure';
import { type CanItFly, canItFly } from './can-it-fly';
import { type FigurePart, figureParts } from './figure-parts';
import { type LearnedPart, learnedPart } from './learned';
import { ownSettingsText } from './own-settings';
import { type WhichPack, whichPack } from './which-pack';
import { type WiredWhere, wiredWhere } from './wired-where';

/** Everything that the build sheet shows, as plain data: no part of it is markup. */
export interface BuildSheet {
  readonly name: string;
  /** A few words each: what it is for, its board, its region. Only what the script says. */
  readonly about: readonly string[];
  /** What the script is taken for. */
  readonly readAs: ReadAs;
  readonly packs: readonly PackLabel[];
  readonly packInView: string | null;
  readonly parts: readonly SheetPart[];
}

export interface PackLabel {
  readonly name: string;
  /** `6 cells`; empty where the script doesn't say. */
  readonly detail: string;
  /** Why the craft can't take it: the worst must-fix finding that is about this pack alone; null if it can. */
  readonly refusal: string | null;
}

/** One part of the sheet, by the pilot's question. A new part is one file here and one in the page. */
export type SheetPart = CanItFly | WiredWhere | FigurePart | WhichPack | LearnedPart;

/**
 * Puts the sheet of a craft together. `findings`: what the checks found in it, in the script's order. `handed`: what was
 * last handed over to its board, where that is known.
 */
export function buildSheet(
  craft: Craft,
  findings: readonly Finding[],
  pack: string | null,
  handed: HandOver | null = null,
): BuildSheet {
  const view = new CraftView(craft, pack);
  return {
    name: view.text('craft.name') ?? fileName(craft.root.uri),
    about: about(view, handed),
    readAs: craft.readAs(),
    packs: craft.packs().map((name) => packLabel(craft, findings, name)),
    packInView: pack,
    parts: partsOf(craft, view, findings),
  };
}

function packLabel(craft: Craft, findings: readonly Finding[], name: string): PackLabel {
  const refusal = findings.find(
    ({ pack, level, accepted }) => pack === name && level === 'must-fix' && accepted === null,
  );
  return {
    name,
    detail: cellsOf(new CraftView(craft, name), name),
    refusal: refusal === undefined ? null : messageOf(refusal),
  };
}

/** A part that other scripts include has no ports and packs to show: a craft that includes it has. */
function partsOf(craft: Craft, view: CraftView, findings: readonly Finding[]): readonly SheetPart[] {
  const found = canItFly(craft, findings);
  if (!craft.isWhole()) return [found];
  const [hands, late, seen] = inOrder(figureParts(craft, view));
  return [found, wiredWhere(view, findings), ...hands, ...late, whichPack(craft), ...seen, learnedPart(view)];
}

/** Each where it is, in the order of the pilot's questions. */
function inOrder(parts: readonly FigurePart[]): readonly [FigurePart[], FigurePart[], FigurePart[]] {
  const of = (id: FigurePart['id']) => parts.filter((part) => part.id === id);
  return [of('my-hands'), of('how-late'), of('who-sees-me')];
}

function about(view: CraftView, handed: HandOver | null): readonly string[] {
  const purpose = view.isSet('craft.purpose') ? view.word('craft.purpose') : null;
  const board = view.board === undefined ? undefined : view.boardTitle;
  const region = view.isSet('rules.region')
    ? view.catalog.region(view.word('rules.region') ?? '')?.title
    : undefined;
  return [purpose, board, region, ownSettingsText(view, handed)].flatMap((word) => word ?? []);
}

function cellsOf(view: CraftView, pack: string): string {
  const cells = view.isSet(`pack.${pack}.cells`) ? view.count(`pack.${pack}.cells`) : null;
  if (cells === null) return '';
  return cells === 1 ? '1 cell' : `${cells} cells`;
}

/** Every figure that can be computed with one pack; null where the craft names none. */
export interface PackFigures {
  readonly pack: string | null;
  readonly figures: readonly Figure[];
}

/** All figures of a craft, for programs: the numbers behind the sheet, pack by pack. */
export function allFigures(craft: Craft): readonly PackFigures[] {
  return craft.packsOrNone().map((pack) => {
    const view = new CraftView(craft, pack);
    return { pack, figures: figureSources.flatMap(({ id }) => figureOf(view, id) ?? []) };
  });
}
