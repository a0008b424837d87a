import { dimensionPhrase } from '../craft/evaluate';
import type { Acceptance } from '../language/ast';
import { shortNumber } from '../units/number-text';
import { fromBase, unitOf } from '../units/unit';
import { isWord, type Under, underCursor } from './cursor';
import { code, escaped } from './markdown';
import { choiceLine, parameterFooter, parameterParagraphs, sourceText } from './parameter-text';
import { type Position, type Range, rangeInLine } from './range';
import type { Snapshot } from './snapshot';
import { effectsOf, valueHere } from './value-here';

export interface Hover {
  readonly range: Range;
  readonly markdown: string;
}

/** What is known about the thing under a position, here and now. */
export function hover(snapshot: Snapshot, position: Position): Hover | null {
  const under = underCursor(snapshot, position);
  if (under === undefined) return null;
  const paragraphs = textFor(snapshot, under);
  if (paragraphs.length === 0) return null;
  return { range: rangeInLine(position.line, under.span), markdown: paragraphs.join('\n\n') };
}

function textFor(snapshot: Snapshot, under: Under): readonly string[] {
  switch (under.kind) {
    case 'setting-name':
    case 'value':
      return parameterText(snapshot, under.path);
    case 'reference':
      return referenceText(snapshot, under);
    case 'constant':
      return constantText(snapshot, under.name, under.line.section.pack ?? snapshot.pack);
    case 'section':
      return sectionText(snapshot, under.path);
    case 'pack':
      return sectionText(snapshot, `pack.${under.name}`);
    case 'acceptance':
      return checkText(snapshot, under.check);
    case 'include':
      return [];
  }
}

/** The whole story of a parameter on this craft. */
export function parameterText(snapshot: Snapshot, path: string): readonly string[] {
  const found = snapshot.catalog.parameter(path);
  if (found === undefined) return [];
  const words = snapshot.craft.words(found);
  const choices = snapshot.catalog
    .choices(found.parameter)
    .filter(({ name }) => words?.includes(name) ?? true);
  const [title = '', ...rest] = parameterParagraphs(found, choices);
  return [
    title,
    ...valueHere(snapshot, found),
    ...effectsOf(snapshot, found),
    ...rest,
    parameterFooter(found),
  ];
}

function referenceText(snapshot: Snapshot, under: Extract<Under, { kind: 'reference' }>): readonly string[] {
  const { text } = under.node.path;
  const path = under.line.settingPath;
  const found = path === null ? undefined : snapshot.catalog.parameter(path);
  if (found !== undefined && isWord(snapshot, found, text)) {
    const choice = snapshot.catalog.choices(found.parameter).find(({ name }) => name === text);
    return [
      ...(choice === undefined ? [] : [choiceLine(choice).slice(2)]),
      ...parameterText(snapshot, found.path),
    ];
  }
  if (text.includes('.')) return parameterText(snapshot, text);
  const constant = constantText(snapshot, text, under.line.section.pack ?? snapshot.pack);
  return constant.length > 0 ? constant : found === undefined ? [] : parameterText(snapshot, found.path);
}

function constantText(snapshot: Snapshot, name: string, pack: string | null): readonly string[] {
  const result = snapshot.craft.constant(name, pack);
  if (result.kind !== 'value') return [];
  const { value, unit, dimension } = result.value;
  const shown = unit === null ? shortNumber(value) : `${shortNumber(fromBase(value, unitOf(unit)))} ${unit}`;
  return [`Constant ${code(name)} = **${escaped(shown)}**, ${escaped(dimensionPhrase(dimension))}`];
}

function sectionText({ catalog }: Snapshot, path: string): readonly string[] {
  const [groupName = ''] = path.split('.');
  const group = catalog.groups.get(groupName);
  const dot = path.lastIndexOf('.');
  const member = catalog.members(path.slice(0, dot)).find(({ name }) => name === path.slice(dot + 1));
  const count = catalog.parametersUnder(path).length;
  const told = member === undefined ? [] : [`**${escaped(member.title)}**`, escaped(member.summary)];
  const about =
    group === undefined ? [] : [`**${escaped(group.title)}** · ${code(path)}`, escaped(group.summary)];
  return told.length + about.length === 0 ? [] : [...told, ...about, `${count} parameters can be set here.`];
}

function checkText({ catalog }: Snapshot, id: Acceptance['check']): readonly string[] {
  const check = catalog.check(id);
  if (check === undefined) return [];
  const told = [
    `**${escaped(check.title)}** · ${code(check.id)}`,
    escaped(check.message),
    escaped(check.advice),
  ];
  return [...told, `Level: ${check.level}. Source: ${sourceText(check.source)}.`];
}
