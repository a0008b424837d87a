import { suggestWord } from '../../catalog/suggest';
import type { Craft } from '../../craft/craft';
import { functions } from '../../craft/functions';
import type { Problem, Span, ValueNode } from '../../language/ast';
import { quoted } from '../../language/quoted-text';
import type { ScriptLine } from '../../language/script-line';
import { childNodes } from '../../language/value-nodes';
import type { Fix } from '../report/finding';
import { knownSetting } from './setting';

/** Writes another text in place of a part of a line. */
function written(
  craft: Craft,
  line: ScriptLine,
  { start, end }: Span,
  newText: string,
  title = 'Write {to}',
): Fix {
  const edits = [{ place: { script: craft.root, line, start, end }, newText }];
  return { title, values: { to: newText }, set: line.settingPath, edits, isHelp: true };
}

/** `mass = 200 g ready to fly`: what stands behind a whole value was meant for people. */
export function restAsComment(craft: Craft, line: ScriptLine, found: Problem): readonly Fix[] {
  if (found.values.expected?.startsWith('the end of the line') !== true) return [];
  const at = { start: found.start, end: found.start };
  return [written(craft, line, at, '# ', 'Make the rest a comment')];
}

/** `quiet.tone`, as a name of one word. */
export function joinedName(craft: Craft, line: ScriptLine, found: Problem): readonly Fix[] {
  const words = (found.values.given ?? '').split(/[^A-Za-z0-9]/).filter((word) => word !== '');
  const name = words.join('-').replace(/^\d+-?/, '');
  return name === '' ? [] : [written(craft, line, found, name, 'Call it {to}')];
}

export function otherFunction(craft: Craft, line: ScriptLine, found: Problem): readonly Fix[] {
  const given = found.values.name ?? '';
  const span = { start: found.start, end: found.start + given.length };
  const near = suggestWord(functions.keys(), given).map((name) => written(craft, line, span, name));
  return near.length > 0 ? near : withoutFunction(craft, line, span);
}

/** `floor(90.5 Hz)`, without the function. */
function withoutFunction(craft: Craft, line: ScriptLine, { start, end }: Span): readonly Fix[] {
  const [call, argument] = /^ *\(([^(),]+)\)/.exec(line.text.slice(end)) ?? [];
  if (call === undefined || argument === undefined) return [];
  return [written(craft, line, { start, end: end + call.length }, argument.trim())];
}

/** `90 Hz + 1 V`, `90 Hz / 0`: what stands first is what the value is of. */
export function firstPart(craft: Craft, line: ScriptLine, found: Problem): readonly Fix[] {
  const { statement, text } = line;
  const value = 'value' in statement ? statement.value : null;
  const [whole] = value === null ? [] : nodesAround(value, found).slice(-1);
  const part =
    whole?.kind === 'sum'
      ? whole.terms[0]?.node
      : whole?.kind === 'product'
        ? whole.factors[0]?.node
        : undefined;
  if (whole === undefined || part === undefined) return [];
  const first = text.slice(part.start, part.end);
  return [written(craft, line, whole, first, 'Write {to} alone')];
}

/** Sums and products that hold a span, the outermost first. */
function nodesAround(node: ValueNode, span: Span): readonly ValueNode[] {
  if (node.start > span.start || node.end < span.end) return [];
  const inner = [...childNodes(node)].flatMap((child) => nodesAround(child, span));
  return node.kind === 'sum' || node.kind === 'product' ? [node, ...inner] : inner;
}

export function fewerArguments(craft: Craft, line: ScriptLine, found: Problem): readonly Fix[] {
  const { statement, text } = line;
  const value = 'value' in statement ? statement.value : null;
  const call = value === null ? undefined : callAt(value, found);
  const most = functions.get(found.values.name ?? '')?.most ?? 0;
  const last = call?.args[most - 1];
  const end = call?.args.at(-1)?.end;
  if (call === undefined || last === undefined || end === undefined || call.args.length <= most) return [];
  const kept = text.slice(call.start, last.end) + text.slice(end, call.end);
  return [written(craft, line, call, kept)];
}

function callAt(node: ValueNode, span: Span): Extract<ValueNode, { kind: 'call' }> | undefined {
  if (node.end < span.start || node.start > span.end) return undefined;
  if (node.kind === 'call' && node.start <= span.start && span.end <= node.end) return node;
  for (const child of childNodes(node)) {
    const call = callAt(child, span);
    if (call !== undefined) return call;
  }
  return undefined;
}

/** A point of a curve that falls behind the one before, brought up to it. */
export function levelPoint(craft: Craft, line: ScriptLine, found: Problem): readonly Fix[] {
  const setting = knownSetting(craft, line);
  const value = setting?.statement.value;
  const parameter = setting?.found.parameter;
  if (value?.kind !== 'curve' || parameter?.kind !== 'curve') return [];
  const point = value.points.find(({ x }) => x.start === found.start);
  const before = found.values.before ?? '';
  const isUp = parameter.up.unit !== parameter.across.unit && before.endsWith(` ${parameter.up.unit}`);
  return point === undefined || !isUp ? [] : [written(craft, line, point.y, before)];
}

/** Each word once, and no more than there may be. */
export function shorterList(craft: Craft, line: ScriptLine, found: Problem): readonly Fix[] {
  const value = knownSetting(craft, line)?.statement.value;
  if (value?.kind !== 'list') return [];
  const words = [...new Set(value.items.map(({ start, end }) => line.text.slice(start, end)))];
  const kept = `[${words.slice(0, Number(found.values.most)).join(', ')}]`;
  return [written(craft, line, value, kept)];
}

export function shorterText(craft: Craft, line: ScriptLine, found: Problem): readonly Fix[] {
  const value = knownSetting(craft, line)?.statement.value;
  if (value?.kind !== 'text') return [];
  const longest = Number(found.values.longest);
  const kept = quoted([...value.value].slice(0, longest).join('').trim());
  return [written(craft, line, value, kept, 'Cut it to what fits: {to}')];
}

/** `2026-02-30`, as the last day of its month. */
export function lastOfMonth(craft: Craft, line: ScriptLine, found: Problem): readonly Fix[] {
  const given = /^([1-9]\d{3})-(0[1-9]|1[0-2])-(\d\d)$/.exec(found.values.given ?? '');
  if (given === null) return [];
  const [, year = '', month = '', day = ''] = given;
  const days = [31, isLeap(Number(year)) ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][
    Number(month) - 1
  ];
  return Number(day) > (days ?? 31) ? [written(craft, line, found, `${year}-${month}-${days}`)] : [];
}

function isLeap(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}
