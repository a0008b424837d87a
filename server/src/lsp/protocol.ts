import type { Position, Range } from 'vscode-languageserver-protocol';
import type { Level } from '../catalog/model/check';
import type { ReadAs } from '../craft/read-as';
import type { SalesAnswers, SalesQuestion } from '../features/new-script/sales-page';
import type { Comparison } from '../sheet/compare/compare';
import type { DrawnSheet } from '../sheet/drawn-sheet';
import type { Variant } from '../sheet/variants';
import { type AboutPlace, type AboutScript, OwnNotification, OwnRequest } from './own-message';
import { about, here, object, optional, position, text } from './requests/form';

export type { SalesAnswers, SalesQuestion } from '../features/new-script/sales-page';

/** What the status bar and the build sheet ask for, beside the standard protocol. */
export interface Summary {
  readonly counts: Readonly<Record<Level, number>>;
  readonly packs: readonly string[];
  readonly packInView: string | null;
  /** What the script is taken for; a part to be included has no sheet of its own. */
  readonly readAs: ReadAs;
}

/** The counts and packs of an open script; null when it is not open. */
export const summaryRequest = new OwnRequest<AboutScript, Summary | null>('propsoff/summary', object(about));

/** What a line sets: the path that it names, and the catalogue's name of the parameter. */
export interface SetHere {
  readonly path: string;
  readonly parameter: string;
  /** The pack that the line is for alone. */
  readonly pack: string | null;
}

/** What a line sets; null where it sets nothing that is known. */
export const setHereRequest = new OwnRequest<AboutPlace, SetHere | null>('propsoff/setHere', object(here));

/** Everything about the line at a position, as Markdown. */
export const explainRequest = new OwnRequest<AboutPlace, string | null>('propsoff/explain', object(here));

/** What a check looks for and why, by its id, as Markdown; null for one that there is not. */
export const explainCheckRequest = new OwnRequest<{ readonly check: string }, string | null>(
  'propsoff/explainCheck',
  object({ check: text }),
);

export interface PlaceElsewhere {
  /** Where the text would lie: what it includes is looked for beside it. */
  readonly uri: string;
  readonly text: string;
  readonly position: Position;
}

/** What is under a position of a text that is not open here, such as an earlier revision. */
export const hoverElsewhereRequest = new OwnRequest<
  PlaceElsewhere,
  { readonly markdown: string; readonly range: Range } | null
>('propsoff/hoverElsewhere', object({ uri: text, text, position }));

/** The pack that the pilot wants to look at. */
export const packInViewNotification = new OwnNotification<{
  readonly uri: string;
  readonly pack: string | null;
}>('propsoff/packInView', object({ uri: text, pack: optional(text) }));

export interface SheetParams extends AboutScript {
  /** The record of the last hand-over as it is kept beside the script. */
  readonly handed?: string | null;
}

/** The build sheet of an open script with the pack in view. */
export const sheetRequest = new OwnRequest<SheetParams, DrawnSheet | null>(
  'propsoff/sheet',
  object({ ...about, handed: optional(text) }),
);

/** One side of a comparison: an open script as it stands, or a text that is not open, such as an earlier revision. */
export interface ComparedSide {
  readonly uri: string;
  /** null: the open script as it stands. */
  readonly text: string | null;
  /** What people call it. */
  readonly name: string;
  /** null: the one in view, or of that name, or the first. */
  readonly pack: string | null;
  /** A setting held otherwise than the text has it, as a script writes it; null: all as it is. */
  readonly otherwise: { readonly path: string; readonly to: string } | null;
}

export interface ComparedSides {
  readonly before: ComparedSide;
  readonly after: ComparedSide;
}

const side = object({
  uri: text,
  text: optional(text),
  name: text,
  pack: optional(text),
  otherwise: optional(object({ path: text, to: text })),
});

/** What differs between two scripts, or two packs of one; null when a script is not open. */
export const compareRequest = new OwnRequest<ComparedSides, Comparison | null>(
  'propsoff/compare',
  object({ before: side, after: side }),
);

/** What a craft may be seen beside: itself with a load or without, and in the cold; null when it is not open. */
export const variantsRequest = new OwnRequest<AboutScript, readonly Variant[] | null>(
  'propsoff/variants',
  object(about),
);

export interface SalesPageAnswer {
  /** What is wrong with answers, by question. */
  readonly faults: Readonly<Partial<Record<SalesQuestion, string>>>;
  /** The script; null while something is wrong. */
  readonly text: string | null;
}

/** A script of what a sales page tells, and what of that can't be written. */
export const salesPageRequest = new OwnRequest<SalesAnswers, SalesPageAnswer>(
  'propsoff/salesPage',
  object({ size: text, kv: text, cells: text, propeller: text }),
);
