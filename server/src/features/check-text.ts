import type { Check } from '../catalog/model/check';
import type { Finding } from '../checks/finding';
import { adviceOf, messageOf } from '../checks/render';
import { code, escaped } from './markdown';
import { sourceText } from './parameter-text';

/** What was found, what to do about it, and where that is known from. As Markdown paragraphs. */
export function findingParagraphs(finding: Finding): readonly string[] {
  const accepted = finding.accepted === null ? [] : [`**Accepted:** ${escaped(finding.accepted)}`];
  return [
    `**${finding.level}** · ${code(finding.check.id)}`,
    `${escaped(messageOf(finding))} ${escaped(adviceOf(finding))}`,
    ...accepted,
    `Source: ${sourceText(finding.check.source)}.`,
  ];
}

/** What a check looks for, without a craft to name its values. As Markdown paragraphs. */
export function checkParagraphs(check: Check): readonly string[] {
  return [
    `**${escaped(check.title)}** · ${code(check.id)} · ${check.level}`,
    `Says: ${templateText(check.message)}`,
    `To do: ${templateText(check.advice)}`,
    ...ruleText(check),
    `Source: ${sourceText(check.source)}.`,
  ];
}

/** A check's words with a gap where a craft's values go. */
function templateText(template: string): string {
  return escaped(template.replace(/\[\[|\]\]/g, '').replace(/\{[^{}]*\}/g, '…'));
}

function ruleText(check: Check): readonly string[] {
  if (check.by !== 'data') return [];
  const each = check.each === undefined ? '' : `, for each of ${code(check.each)}`;
  return [`It is raised when ${check.when.map(code).join(' and ')}${each}.`];
}
