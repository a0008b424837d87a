import type { HandOver } from '../catalog/model/hand-over';
import type { Finding } from '../checks/report/finding';
import { asScript, type Renderer } from '../checks/report/render';
import type { Craft } from '../craft/craft';
import { fileName } from '../craft/include-path';
import type { ReadAs } from '../craft/read-as';
import { CraftView } from '../craft/view';
import { figureSources, figuresOf } from '../figures';
import type { Figure } from '../figures/figure';
import { type CanItFly, canItFly } from './can-it-fly';
import { type FigurePart, figureParts } from './figure-parts';
import { type LearnedPart, learnedPart } from './learned';
import { notKnownOf } from './not-known';
import { ownSettingsText } from './own-settings';
import { type PackColumn, packColumns, type WhichPack, whichPack } from './which-pack';
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
  renderer = asScript,
): BuildSheet {
  const view = new CraftView(craft, pack);
  return {
    name: view.text('craft.name') ?? fileName(craft.root.uri),
    about: about(view, handed),
    readAs: craft.readAs(),
    packs: craft.packs().map((name) => packLabel(craft, findings, name, renderer)),
    packInView: pack,
    parts: partsOf(craft, view, findings, renderer),
  };
}

function packLabel(craft: Craft, findings: readonly Finding[], name: string, renderer: Renderer): PackLabel {
  const refusal = findings.find(
    ({ pack, level, accepted }) => pack === name && level === 'must-fix' && accepted === null,
  );
  return {
    name,
    detail: cellsOf(new CraftView(craft, name), name),
    refusal: refusal === undefined ? null : renderer.message(refusal),
  };
}

/** A part that other scripts include has no ports and packs to show: a craft that includes it has. */
function partsOf(
  craft: Craft,
  view: CraftView,
  findings: readonly Finding[],
  renderer: Renderer,
): readonly SheetPart[] {
  const packs = packColumns(craft);
  // No board knows all of its craft.
  const { withheld: unknown, sentences } = craft.isWhole()
    ? notKnownOf(view, unknownWith(packs))
    : { withheld: [], sentences: [] };
  const found = canItFly(craft, findings, { packs, notKnown: sentences }, renderer);
  if (!craft.isWhole()) return [found];
  const [hands, late, cool, seen] = inOrder(figureParts(packs, unknown, view));
  const which = whichPack(packs, unknown, view);
  return [found, wiredWhere(view, findings), ...hands, ...late, which, ...cool, ...seen, learnedPart(view)];
}

/** What can't be computed with some pack: of nothing else it has to be asked why. */
function unknownWith(packs: readonly PackColumn[]): readonly string[] {
  const ids = figureSources.map(({ id }) => id);
  return ids.filter((id) => packs.some(({ figures }) => !figures.has(id)));
}

/** Each where it is, in the order of the pilot's questions. */
function inOrder(
  parts: readonly FigurePart[],
): readonly [FigurePart[], FigurePart[], FigurePart[], FigurePart[]] {
  const of = (id: FigurePart['id']) => parts.filter((part) => part.id === id);
  return [of('my-hands'), of('how-late'), of('stay-cool'), of('who-sees-me')];
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
    return { pack, figures: [...figuresOf(view).values()] };
  });
}
