import type { Catalog } from '../catalog/catalog';
import type { Craft } from '../craft/craft';
import { CraftView } from '../craft/view';
import { figureOf, figureSources } from '../figures';
import type { FigureSource } from '../figures/figure';
import { figureText } from '../sheet/which-pack';
import { sectionExtents } from './navigation/section-extents';
import type { Range } from './range';
import { rangeInLine } from './range';
import type { Snapshot } from './snapshot';

/** What stands above a section. */
export interface CodeLens {
  readonly range: Range;
  /** What the section comes to: opens the build sheet. */
  readonly figures: string | null;
  /** Settings of the section that other values can be tried for. */
  readonly tryable: readonly string[];
  /** The pack that the section is for alone, or tells of: what is tried in it is looked at with this one. */
  readonly pack: string | null;
}

/** Figures above a section; more would push the section apart. */
const mostFigures = 2;

/** Above each section what it comes to with the pack in view, and what can be tried in it. */
export function codeLenses(snapshot: Snapshot): readonly CodeLens[] {
  const { script, craft, pack } = snapshot;
  if (!craft.isWhole()) return [];
  return sectionExtents(script.document).flatMap(({ header, first, last }): readonly CodeLens[] => {
    const { statement } = header;
    if (statement.kind !== 'section') return [];
    const section = header.section.path;
    const own = header.section.pack ?? packOf(section, craft);
    const paths: string[] = [];
    for (let number = first + 1; number <= last; number += 1) {
      const path = script.document.lineAt(number)?.settingPath;
      if (path != null && holdsNumber(path, craft.catalog)) paths.push(path);
    }
    if (section === null || paths.length === 0) return [];
    const figures = figuresOf(new CraftView(craft, own ?? pack), paths);
    const range = rangeInLine(first, { start: 0, end: header.text.length });
    return [
      {
        range,
        figures: figures.length === 0 ? null : figures.join(' · '),
        tryable: paths,
        pack: own,
      },
    ];
  });
}

/** The pack that a section tells of: `sprint` for `pack.sprint`. */
function packOf(section: string | null, craft: Craft): string | null {
  return craft.packs().find((name) => section === `pack.${name}`) ?? null;
}

/** Whether other values of it can be tried with a slider. */
function holdsNumber(path: string, catalog: Catalog): boolean {
  const kind = catalog.parameter(path)?.parameter.kind;
  return kind === 'quantity' || kind === 'count';
}

/** The figures that hang on a section's settings before all others. */
function figuresOf(view: CraftView, paths: readonly string[]): readonly string[] {
  const names = new Set(paths.map((path) => view.catalog.parameter(path)?.name));
  const led = ({ from: [first] }: FigureSource) => first !== undefined && names.has(first);
  const texts: string[] = [];
  for (const source of figureSources.filter(led)) {
    const figure = texts.length < mostFigures ? figureOf(view, source.id) : null;
    if (figure !== null) texts.push(`${source.title} ${figureText(figure)}`);
  }
  return texts;
}
