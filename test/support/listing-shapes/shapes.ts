import type { ShapeMaker } from './shape';
import { attributes, bars, headedColumns, saidBefore, stated } from './shapes/beside';
import { elements, json, jsonOnOneLine, jsonRows, table, yaml } from './shapes/documents';
import {
  braces,
  brackets,
  commentHeadings,
  groupBefore,
  indented,
  inlineBraces,
  pathHeadings,
  paths,
  spokenHeadings,
} from './shapes/grouped';
import {
  columns,
  enclosed,
  leaders,
  numbered,
  pairs,
  quotedNames,
  repeated,
  spaced,
  valueFirst,
} from './shapes/plain';
import {
  bareWords,
  continued,
  ledSettings,
  mixedForms,
  severalSettings,
  severalValues,
} from './shapes/several';

/** Every way to print settings that a listing may have. None is that of a board that exists. */
export const shapes = {
  pairs,
  spaced,
  columns,
  leaders,
  'quoted names': quotedNames,
  numbered,
  enclosed,
  repeated,
  'value first': valueFirst,
  paths,
  'group before': groupBefore,
  brackets,
  'comment headings': commentHeadings,
  indented,
  'spoken headings': spokenHeadings,
  'path headings': pathHeadings,
  braces,
  'inline braces': inlineBraces,
  'several settings': severalSettings,
  'led settings': ledSettings,
  'several values': severalValues,
  'bare words': bareWords,
  'mixed forms': mixedForms,
  continued,
  stated,
  'said before': saidBefore,
  attributes,
  bars,
  'headed columns': headedColumns,
  json,
  'json on one line': jsonOnOneLine,
  'json rows': jsonRows,
  yaml,
  elements,
  table,
} as const satisfies Readonly<Record<string, ShapeMaker>>;

export type ShapeName = keyof typeof shapes;

export const shapeNames = Object.keys(shapes) as readonly ShapeName[];
