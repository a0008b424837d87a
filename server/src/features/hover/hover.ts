import { choiceSources } from '../../catalog/choice-sources';
import { inputKeys } from '../../craft/keys';
import { ownGroup } from '../../language/path-text';
import { dimensionPhrase } from '../../units/dimension-names';
import { choicesHere } from '../completion/choices-here';
import { code, escaped } from '../markdown';
import { type Position, type Range, rangeInLine } from '../range';
import type { Snapshot } from '../snapshot';
import { checkParagraphs, findingParagraphs } from './check-text';
import { isWord, type Under, underCursor } from './cursor';
import { ownSectionText, ownSettingText } from './own-text';
import {
  choiceText,
  memberIn,
  memberList,
  memberParagraphs,
  parameterFooter,
  parameterParagraphs,
  parameterTitle,
  sourcesText,
} from './parameter-text';
import { evaluatedText } from './quantity-text';
import { effectsOf, packFigureTexts, placeName, valueHere } from './value-here';

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
  const { statement, section } = under.line;
  switch (under.kind) {
    case 'setting-name':
      return parameterText(snapshot, under.path, section.pack);
    case 'value':
      return statement.kind === 'constant'
        ? constantText(snapshot, statement.name.text, section.pack)
        : parameterText(snapshot, under.path, section.pack);
    case 'reference':
      return referenceText(snapshot, under);
    case 'constant':
      return constantText(snapshot, under.name, section.pack);
    case 'section':
      return sectionText(snapshot, under.path);
    case 'pack':
      return sectionText(snapshot, `pack.${under.name}`);
    case 'acceptance':
      return acceptanceText(snapshot, under);
    case 'include':
      return [];
  }
}

/** A hover is read at a glance: longer lists of choices are named, not described. */
const mostDescribed = 6;

/** The whole story of a parameter on this craft, what holds here and now first. `pack`: that of its section. */
export function parameterText(snapshot: Snapshot, path: string, pack: string | null): readonly string[] {
  const found = snapshot.catalog.parameter(path);
  if (found === undefined) return [];
  if (found.parameter.kind === 'bare') return ownSettingText(snapshot, found);
  return [
    parameterTitle(found, found.path),
    ...valueHere(snapshot, found),
    ...effectsOf(snapshot, found, pack ?? snapshot.pack),
    ...memberParagraphs(found.path, snapshot.catalog),
    ...parameterParagraphs(found, choicesHere(snapshot, found), mostDescribed),
    parameterFooter(found),
  ];
}

function referenceText(snapshot: Snapshot, under: Extract<Under, { kind: 'reference' }>): readonly string[] {
  const { text } = under.node.path;
  const { settingPath: path, section } = under.line;
  const found = path === null ? undefined : snapshot.catalog.parameter(path);
  if (found !== undefined && isWord(snapshot, found, text)) {
    const choice = choicesHere(snapshot, found).find(({ name }) => name === text);
    return [
      ...(choice === undefined ? [] : [choiceText(choice)]),
      ...sourcesText(text, choiceSources(snapshot.catalog, found.parameter, text)),
      ...parameterText(snapshot, found.path, section.pack),
    ];
  }
  if (text.includes('.')) return parameterText(snapshot, text, section.pack);
  const constant = constantText(snapshot, text, section.pack);
  return constant.length > 0 || found === undefined
    ? constant
    : parameterText(snapshot, found.path, section.pack);
}

function constantText(snapshot: Snapshot, name: string, pack: string | null): readonly string[] {
  const result = snapshot.craft.constant(name, pack ?? snapshot.pack);
  if (result.kind !== 'value') return [];
  const line = snapshot.craft.lines(inputKeys.constant(name)).at(-1);
  const where = line === undefined ? '' : `, set in ${escaped(placeName(snapshot, line))}`;
  const { value } = result;
  return [
    `Constant ${code(name)} = **${escaped(evaluatedText(value))}**, ${escaped(dimensionPhrase(value.dimension))}${where}`,
  ];
}

/** What a section is for; for a pack, what its settings come to. */
export function sectionText(snapshot: Snapshot, path: string): readonly string[] {
  const { catalog } = snapshot;
  const [groupName = ''] = path.split('.');
  const group = catalog.groups.get(groupName);
  if (groupName === ownGroup && group !== undefined) return ownSectionText(snapshot, path, group);
  const member = memberIn(path, catalog);
  const count = catalog.parametersUnder(path).length;
  if (group === undefined || count === 0) return [];
  const summary = member === undefined ? [] : [escaped(member.summary)];
  const figures = path.startsWith('pack.') ? packFigureTexts(snapshot, path.slice(5)) : [];
  const settings = count === 1 ? 'One setting' : `${count} settings`;
  return [
    `**${escaped(member?.title ?? group.title)}** · ${code(path)}`,
    ...figures,
    ...summary,
    ...memberList(path, catalog),
    escaped(group.summary),
    `${settings} can stand here.`,
  ];
}

/** What is accepted on the line; what the check looks for, where it found nothing. */
function acceptanceText(
  snapshot: Snapshot,
  { line, check: id }: Extract<Under, { kind: 'acceptance' }>,
): readonly string[] {
  const found = snapshot.findings().find(({ place, check }) => place.line === line && check.id === id);
  if (found !== undefined) return findingParagraphs(found, snapshot);
  const check = snapshot.catalog.check(id);
  return check === undefined ? [] : checkParagraphs(check, snapshot.catalog);
}
