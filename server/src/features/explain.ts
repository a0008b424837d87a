import type { Catalog } from '../catalog/catalog';
import type { KnownParameter } from '../catalog/known-parameter';
import type { Check } from '../catalog/model/check';
import type { Finding } from '../checks/finding';
import { adviceOf, messageOf } from '../checks/render';
import { underCursor } from './cursor';
import { parameterText } from './hover';
import { code, escaped } from './markdown';
import { parameterFooter, parameterParagraphs, sourceText } from './parameter-text';
import type { Position } from './range';
import type { Snapshot } from './snapshot';

/** Everything about the line at a position: what was found there, and its parameter. As Markdown. */
export function explainLine(snapshot: Snapshot, position: Position): string | null {
  const line = snapshot.script.document.lineAt(position.line);
  if (line === undefined) return null;
  const findings = snapshot.findings().filter(({ place }) => place.line === line);
  const path = line.settingPath ?? pathUnder(snapshot, position);
  const about = path === null ? [] : parameterText(snapshot, path);
  const paragraphs = [...findings.map(findingParagraph), ...about];
  return paragraphs.length === 0 ? null : paragraphs.join('\n\n');
}

function pathUnder(snapshot: Snapshot, position: Position): string | null {
  const under = underCursor(snapshot, position);
  return under?.kind === 'section' ? under.path : null;
}

function findingParagraph(finding: Finding): string {
  const accepted = finding.accepted === null ? '' : ` *Accepted:* ${escaped(finding.accepted)}`;
  const source = sourceText(finding.check.source);
  const told = `${escaped(messageOf(finding))} ${escaped(adviceOf(finding))}${accepted}`;
  return `**${finding.level}** · ${code(finding.check.id)}\n\n${told}\n\nSource: ${source}.`;
}

/** A parameter by its catalogue name or by a path that a script would write; as Markdown. */
export function explainParameter(catalog: Catalog, path: string): string | null {
  const known = catalog.parameters.get(path) ?? catalog.parameter(path);
  return known === undefined ? null : knownText(catalog, known);
}

function knownText(catalog: Catalog, known: KnownParameter): string {
  return [...parameterParagraphs(known, catalog.choices(known.parameter)), parameterFooter(known)].join(
    '\n\n',
  );
}

/** A check by its id; as Markdown. */
export function explainCheck(catalog: Catalog, id: string): string | null {
  const check = catalog.check(id);
  return check === undefined ? null : checkText(check);
}

function checkText(check: Check): string {
  const rule =
    check.by === 'data'
      ? [
          `It is raised when ${check.when.map(code).join(' and ')}${check.each === undefined ? '' : `, for each of ${code(check.each)}`}.`,
        ]
      : [];
  return [
    `**${escaped(check.title)}** · ${code(check.id)} · ${check.level}`,
    `Says: ${escaped(check.message)}`,
    `To do: ${escaped(check.advice)}`,
    ...rule,
    `Source: ${sourceText(check.source)}.`,
  ].join('\n\n');
}
