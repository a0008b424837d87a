import type { Catalog } from '../../catalog/catalog';
import type { Check, DataCheck } from '../../catalog/model/check';
import { slotsIn } from '../../checks/data/data-template';
import { isAboutAcceptances } from '../../checks/report/acceptances';
import type { Finding } from '../../checks/report/finding';
import { adviceOf, fixTitle, messageOf } from '../../checks/report/render';
import { CraftView } from '../../craft/view';
import { figureOf } from '../../figures';
import { shortNumber } from '../../units/number-text';
import { code, escaped } from '../markdown';
import type { Snapshot } from '../snapshot';
import { sourceText } from './parameter-text';

/** What was found, by which rule and with which numbers, what to do about it, and where that is known from. */
export function findingParagraphs(finding: Finding, { craft }: Pick<Snapshot, 'craft'>): readonly string[] {
  const { check, accepted, fixes, pack } = finding;
  const tries = fixes.map((fix) => escaped(fixTitle(fix)));
  return [
    `**${finding.level}** · ${code(check.id)}`,
    `${escaped(messageOf(finding))} ${escaped(adviceOf(finding))}`,
    ...(accepted === null ? [] : [`**Accepted:** ${escaped(accepted)}`]),
    ...ruleText(check),
    ...(check.by === 'data'
      ? numbersHere(check, new CraftView(craft, pack ?? craft.packs()[0] ?? null))
      : []),
    ...(tries.length === 0 ? [] : [`**Try:** ${tries.join('; ')}.`]),
    `Source: ${sourceText(check.source)}.`,
  ];
}

/** What a check looks for, without a craft to give its values. As Markdown paragraphs. */
export function checkParagraphs(check: Check, catalog: Catalog): readonly string[] {
  return [
    `**${escaped(check.title)}** · ${code(check.id)} · ${check.level}`,
    `**Says:** ${templateText(check.message)}`,
    `**To do:** ${templateText(check.advice)}`,
    ...ruleText(check),
    ...(check.by === 'data' ? [...proofText(check, catalog), ...triesText(check)] : []),
    ...acceptText(check),
    `Source: ${sourceText(check.source)}.`,
  ];
}

/** How it is accepted on one line, where it can be. */
function acceptText(check: Check): readonly string[] {
  if (check.level === 'must-fix' || isAboutAcceptances(check)) return [];
  return [`**Accept it:** ${code(`# accept ${check.id}: why it is fine here`)} at the end of its line.`];
}

/** A check's words with the names of the values that a craft puts in. */
function templateText(template: string): string {
  const plain = template.replace(/\[\[|\]\]/g, '');
  const parts = plain.split(/\{([^{}]*)\}/);
  return parts
    .map((part, index) => (index % 2 === 0 ? escaped(part) : code(`<${part.replace(/ in \S+$/, '')}>`)))
    .join('');
}

function ruleText(check: Check): readonly string[] {
  if (check.by === 'code') return check.rule === undefined ? [] : [`**Rule:** ${escaped(check.rule)}`];
  const each = check.each === undefined ? '' : `, for each of ${code(check.each)}`;
  return [`**Rule:** It is raised when ${check.when.map(code).join(' and ')}${each}.`];
}

/** The step that shows that the setting works, at which the finding stands. */
function proofText({ at }: DataCheck, catalog: Catalog): readonly string[] {
  const known = catalog.parameters.get(at);
  return known === undefined ? [] : [`**Prove it:** ${escaped(known.parameter.prove)}`];
}

function triesText({ fixes = [] }: DataCheck): readonly string[] {
  return fixes.length === 0
    ? []
    : [
        `**Try:** ${fixes.map(({ title, ...fix }) => templateText('to' in fix ? title.replaceAll('{to}', fix.to) : title)).join('; ')}.`,
      ];
}

const pathForm = /^[a-z][a-z-]*(?:\.[a-z][a-z-]*)+$/;

/** The settings and figures of a rule's conditions with what they are here; figures with their formula. */
function numbersHere(check: DataCheck, view: CraftView): readonly string[] {
  const names = new Set(
    [...check.when, ...slotsIn(check.message)].flatMap((text) =>
      (text.match(/[a-z][a-z.-]*[a-z-]/g) ?? []).filter((word) => pathForm.test(word)),
    ),
  );
  const lines = [...names].flatMap((name) => numberHere(name, view));
  return lines.length === 0 ? [] : [lines.map((line) => `- ${line}`).join('\n')];
}

function numberHere(name: string, view: CraftView): readonly string[] {
  if (!name.startsWith('figure.')) {
    return view.catalog.parameter(name) === undefined ? [] : [`${code(name)}: ${escaped(view.shown(name))}`];
  }
  const figure = figureOf(view, name.slice(7));
  if (figure === null) return [];
  const { title, likely, unit, why } = figure;
  return [`${escaped(title)}: ${escaped(shortText(likely, unit))} = ${escaped(why)}`];
}

function shortText(value: number, unit: string): string {
  return `${shortNumber(value)} ${unit}`.trim();
}
