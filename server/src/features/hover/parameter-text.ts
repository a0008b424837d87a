import type { Catalog } from '../../catalog/catalog';
import { inParts, type Part } from '../../catalog/in-parts';
import type { KnownParameter } from '../../catalog/known-parameter';
import type { Member } from '../../catalog/model/collection';
import type { CitedSource } from '../../catalog/model/common';
import type { Choice, Parameter } from '../../catalog/model/parameter';
import { membershipsIn } from '../../craft/memberships';
import { code, escaped } from '../markdown';

/** What a parameter can be set to, in a line. */
export function allowedText(parameter: Parameter): string {
  switch (parameter.kind) {
    case 'quantity':
      return `${between(parameter.range)}, usually ${between(parameter.usual)}`;
    case 'count':
      return `a whole number from ${between(parameter.range)}, usually ${between(parameter.usual)}`;
    case 'range':
      return `a range within ${between(parameter.range)}, usually within ${between(parameter.usual)}`;
    case 'curve': {
      const { across, up } = parameter;
      return `a rising curve: ${between(across.range)} across, ${between(up.range)} up, usually ${between(up.usual)}`;
    }
    case 'flag':
      return 'on or off';
    case 'word':
      return parameter.permutationOf === undefined
        ? 'one word'
        : `the letters ${parameter.permutationOf} in any order`;
    case 'words':
      return `a list of up to ${parameter.most} words`;
    case 'place':
      return 'a place on the overlay grid: [row, column], counted from 0 at the top left';
    case 'text':
      return `a text of up to ${parameter.longest} characters`;
    case 'date':
      return 'a date such as 2026-05-14';
    case 'bare':
      return 'what the board takes, as the board writes it';
  }
}

function between([low, high]: readonly [string | number, string | number]): string {
  return `${low} to ${high}`;
}

export function parameterTitle({ name, parameter }: KnownParameter, path = name): string {
  return `**${escaped(parameter.title)}** · ${code(path)}`;
}

/**
 * What it does, what it takes and what that leads to, as Markdown paragraphs. `mostDescribed`: with more
 * choices than this, only their names are listed.
 */
export function parameterParagraphs(
  { parameter }: KnownParameter,
  choices: readonly Choice[],
  mostDescribed = Number.POSITIVE_INFINITY,
): readonly string[] {
  return [
    `${escaped(parameter.summary)}${parameter.isNote === true ? ' It is kept for people: its value is not computed with.' : ''}`,
    `Takes ${takesText(parameter)}.${defaultText(parameter)}`,
    ...choicesText(choices, mostDescribed),
    ...slopeText(parameter),
    `**Risk:** ${escaped(parameter.risk)}`,
    `**Prove it:** ${escaped(parameter.prove)}`,
  ];
}

/** The same as Markdown: what is written is shown as such. */
function takesText(parameter: Parameter): string {
  return parameter.kind === 'flag' ? `${code('on')} or ${code('off')}` : escaped(allowedText(parameter));
}

/** Where it belongs and where its facts come from. */
export function parameterFooter({ parameter }: KnownParameter): string {
  const needs = parameter.needs.length === 0 ? '' : ` Needs ${parameter.needs.map(code).join(', ')}.`;
  const others = parameter.related.filter((name) => !parameter.needs.includes(name));
  const related = others.length === 0 ? '' : ` See also ${others.map(code).join(', ')}.`;
  return `Stage: ${parameter.stage}.${needs}${related} Source: ${sourceText(parameter.source)}.`;
}

export function sourceText({ text, date }: CitedSource): string {
  return date === undefined ? escaped(text) : `${escaped(text)} (${escaped(date)})`;
}

/** Where the figures behind a word come from; a region's come from several places. */
export function sourcesText(word: string, sources: readonly CitedSource[]): readonly string[] {
  if (sources.length === 0) return [];
  return [`Figures of ${code(word)}: ${sources.map(sourceText).join('; ')}.`];
}

export function choiceText({ name, summary, risk }: Choice): string {
  return `${code(name)}: ${escaped(summary)}${risk === undefined ? '' : ` **Risk:** ${escaped(risk)}`}`;
}

function choicesText(choices: readonly Choice[], mostDescribed: number): readonly string[] {
  if (choices.length === 0) return [];
  const parts = inParts(choices);
  if (choices.length > mostDescribed) return [namedText(parts)];
  return parts.flatMap(({ title, of }) => [
    ...(title === null ? [] : [`**${escaped(title)}**`]),
    of.map((choice) => `- ${choiceText(choice)}`).join('\n'),
  ]);
}

/** Names alone, part by part: what answers one question stands on one line. */
function namedText(parts: readonly Part<{ readonly name: string }>[]): string {
  const names = (of: readonly { readonly name: string }[]) => of.map(({ name }) => code(name)).join(', ');
  const [only] = parts;
  if (only !== undefined && only.title === null) return `One of ${names(parts.flatMap(({ of }) => of))}.`;
  return parts
    .map(({ title, of }) => `- ${title === null ? '' : `${escaped(title)}: `}${names(of)}`)
    .join('\n');
}

function defaultText(parameter: Parameter): string {
  if (parameter.default === null) return ' Nothing is assumed when it is not set.';
  return ` When it is not set, ${code(parameter.default.value)} is assumed (${escaped(parameter.default.from)}).`;
}

function slopeText(parameter: Parameter): readonly string[] {
  if (!('higher' in parameter)) return [];
  const [up, down] = parameter.kind === 'flag' ? ['`on`:', '`off`:'] : ['**Higher:**', '**Lower:**'];
  return [`- ${up} ${escaped(parameter.higher)}\n- ${down} ${escaped(parameter.lower)}`];
}

/** The member of a closed collection that a path names or runs through: the situation, the switch function. */
export function memberIn(path: string, catalog: Catalog): Member | undefined {
  const [found] = membershipsIn(path, catalog);
  return catalog.collection(found?.collection ?? '')?.keys.kind === 'closed'
    ? catalog.members(found?.collection ?? '').find(({ name }) => name === found?.member)
    : undefined;
}

/** What the member is whose setting is described: the same setting means something else with each. */
export function memberParagraphs(path: string, catalog: Catalog): readonly string[] {
  const member = memberIn(path, catalog);
  return member === undefined ? [] : [`**${escaped(member.title)}:** ${escaped(member.summary)}`];
}

/** What a closed collection can have, part by part; nothing for any other path. */
export function memberList(path: string, catalog: Catalog): readonly string[] {
  if (catalog.collection(path)?.keys.kind !== 'closed') return [];
  return [namedText(inParts(catalog.members(path)))];
}
