import type { Craft } from '../../craft/craft';
import { CraftView } from '../../craft/view';
import type { Problem } from '../../language/ast';
import type { ScriptLine } from '../../language/script-line';
import { parseQuantity } from '../../units/quantity';
import type { Fix } from '../report/finding';
import { goodValue } from '../report/good-value';
import { fixesFor } from '../report/rule-fix';
import { joinedTexts, lineComment, valueToWrite } from '../report/written-line';
import {
  fewerArguments,
  firstPart,
  joinedName,
  lastOfMonth,
  levelPoint,
  otherFunction,
  restAsComment,
  shorterList,
  shorterText,
} from './kept-parts';
import { firstLineOut, lineOfReference, lineOut } from './lines-out';
import { knownSetting, nodeAt } from './setting';

type Mend = (craft: Craft, line: ScriptLine, found: Problem) => readonly Fix[];

/** What can be done about a line in which nothing says what was meant. */
export function mendsFor(craft: Craft, line: ScriptLine, found: Problem): readonly Fix[] {
  const own = (mends.get(found.id) ?? []).flatMap((mend) => mend(craft, line, found));
  return own.length > 0 || found.fixes.length > 0 || !valueLost.has(found.id) ? own : otherValue(craft, line);
}

/** Problems that leave nothing of a value to go by. */
const valueLost: ReadonlySet<string> = new Set([
  'line/value-missing',
  'line/not-understood',
  'line/no-finite-value',
  'line/not-a-number',
  'line/number-too-large',
  'line/unit-in-product',
  'line/temperature-calculated',
  'line/unknown-word',
  'line/unknown-constant',
  'line/wrong-shape',
  'line/divided-by-zero',
  'line/unlike-sum',
  'line/wrong-arguments',
  'line/names-too-deep',
  'line/not-a-quantity',
  'line/own-referred',
  'line/circular',
  'line/list-empty',
]);

const mends: ReadonlyMap<string, readonly Mend[]> = new Map<string, readonly Mend[]>([
  ['line/not-understood', [restAsComment]],
  ['line/constant-name', [joinedName]],
  ['line/constant-unused', [lineOut('Take the constant out')]],
  ['line/constant-value', [lineOut('Take the constant out')]],
  ['line/unknown-function', [otherFunction]],
  ['line/unlike-sum', [firstPart]],
  ['line/divided-by-zero', [firstPart]],
  ['line/wrong-arguments', [fewerArguments]],
  ['line/curve-not-rising', [levelPoint]],
  ['line/outside-usual', [nearestUsual]],
  ['line/list-too-long', [shorterList]],
  ['line/text-too-long', [shorterText]],
  ['line/no-such-date', [lastOfMonth]],
  ['line/reference-not-set', [lineOfReference]],
  ['line/set-twice', [lineOut('Take this line out'), firstLineOut]],
  ['line/include-circle', [lineOut('Take the include out')]],
  ['line/include-refused', [lineOut('Take the include out')]],
  ['line/include-missing', [lineOut('Take the include out')]],
]);

/** The nearest value that is usual, for a unit or a point that has slipped. On the air nothing is guessed. */
function nearestUsual(craft: Craft, line: ScriptLine, found: Problem): readonly Fix[] {
  const setting = knownSetting(craft, line);
  const { given, low, high } = found.values;
  if (setting === null || given === undefined || low === undefined || high === undefined) return [];
  const { parameter, path } = setting.found;
  if (parameter.kind === 'bare' || parameter.hurts.includes('radio-neighbours')) return [];
  const [value, most] = [parseQuantity(given)?.value, parseQuantity(high)?.value];
  if (value === undefined || most === undefined) return [];
  const to = value > most ? high : low;
  const look = 'whether a unit or a decimal point has slipped';
  const fix = { title: 'Write {to}', set: path, to, look };
  const node = nodeAt(setting.statement.value, found);
  return node === setting.statement.value ? fixesFor(new CraftView(craft, line.section.pack), fix) : [];
}

/** Another value in place of the one that nobody can read: the pilot says which. */
function otherValue(craft: Craft, line: ScriptLine): readonly Fix[] {
  const { statement, settingPath, text } = line;
  if (statement.kind === 'constant') return lineOut('Take the constant out')(craft, line);
  const equals = text.indexOf('=');
  if (settingPath === null || equals < 0) return [];
  const view = new CraftView(craft, line.section.pack);
  const to = goodValue(view, settingPath);
  if (to === null) return [];
  const set = { set: settingPath, to, look: 'what it really is' };
  const { comment } = statement;
  const behind = text.slice(equals + 1, comment?.start ?? text.length);
  const start = equals + 1 + (behind.length - behind.trimStart().length);
  const end = Math.max(start, equals + 1 + behind.trimEnd().length);
  const { text: newText, stops } = joinedTexts([
    behind.startsWith(' ') ? '' : ' ',
    valueToWrite(view, set),
    comment === null ? lineComment(set) : '',
  ]);
  const edit = { place: { script: craft.root, line, start, end }, newText, stops };
  return [
    { title: 'Write {to}, to be checked', values: { to }, set: settingPath, edits: [edit], isHelp: true },
  ];
}
