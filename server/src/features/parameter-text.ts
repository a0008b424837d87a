import type { KnownParameter } from '../catalog/known-parameter';
import type { Source } from '../catalog/model/common';
import type { Choice, Parameter } from '../catalog/model/parameter';
import { code, escaped } from './markdown';

/** What a parameter can be set to, in a line. */
export function allowedText(parameter: Parameter): string {
  switch (parameter.kind) {
    case 'quantity':
      return `${parameter.range[0]} to ${parameter.range[1]}, usually ${parameter.usual[0]} to ${parameter.usual[1]}`;
    case 'count': {
      const [low, high] = parameter.range;
      return `a whole number from ${low} to ${high}, usually ${parameter.usual[0]} to ${parameter.usual[1]}`;
    }
    case 'range':
      return `a range within ${parameter.range[0]} to ${parameter.range[1]}`;
    case 'curve': {
      const { across, up } = parameter;
      return `a rising curve from ${across.range[0]}..${across.range[1]} to ${up.range[0]}..${up.range[1]}`;
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
      return 'a place on the overlay grid: [row, column]';
    case 'text':
      return `a text of up to ${parameter.longest} characters`;
    case 'date':
      return 'a date such as 2026-05-14';
  }
}

/** The parts of a parameter's description, as Markdown paragraphs. */
export function parameterParagraphs(known: KnownParameter, choices: readonly Choice[]): readonly string[] {
  const { parameter } = known;
  const paragraphs = [`**${escaped(parameter.title)}** · ${code(known.name)}`, escaped(parameter.summary)];
  paragraphs.push(`Takes ${escaped(allowedText(parameter))}.${defaultText(parameter)}`);
  if (choices.length > 0) paragraphs.push(choices.map(choiceLine).join('\n'));
  paragraphs.push(...slopeLines(parameter));
  paragraphs.push(`**Risk:** ${escaped(parameter.risk)}`);
  paragraphs.push(`**Prove it:** ${escaped(parameter.prove)}`);
  return paragraphs;
}

/** Where it belongs and where its facts come from. */
export function parameterFooter({ parameter }: KnownParameter): string {
  const needs = parameter.needs.length === 0 ? '' : ` Needs ${parameter.needs.map(code).join(', ')}.`;
  const related =
    parameter.related.length === 0 ? '' : ` See also ${parameter.related.map(code).join(', ')}.`;
  return `Stage: ${parameter.stage}.${needs}${related} Source: ${sourceText(parameter.source)}.`;
}

export function sourceText({ text, date }: Source): string {
  return date === undefined ? escaped(text) : `${escaped(text)} (${escaped(date)})`;
}

export function choiceLine({ name, summary, risk }: Choice): string {
  return `- ${code(name)}: ${escaped(summary)}${risk === undefined ? '' : ` *Risk:* ${escaped(risk)}`}`;
}

function defaultText(parameter: Parameter): string {
  if (parameter.default === null) return ' Nothing is assumed when it is not set.';
  return ` When it is not set, ${code(parameter.default.value)} is assumed (${escaped(parameter.default.from)}).`;
}

function slopeLines(parameter: Parameter): readonly string[] {
  if (!('higher' in parameter)) return [];
  const [up, down] = parameter.kind === 'flag' ? ['On', 'Off'] : ['Higher', 'Lower'];
  return [`**${up}:** ${escaped(parameter.higher)}\n\n**${down}:** ${escaped(parameter.lower)}`];
}
