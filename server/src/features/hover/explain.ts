import type { Catalog } from '../../catalog/catalog';
import type { Position } from '../range';
import type { Snapshot } from '../snapshot';
import { checkParagraphs, findingParagraphs } from './check-text';
import { underCursor } from './cursor';
import { parameterText, sectionText } from './hover';
import { memberParagraphs, parameterFooter, parameterParagraphs, parameterTitle } from './parameter-text';

/** Everything about the line at a position: what was found there, and its parameter. As Markdown. */
export function explainLine(snapshot: Snapshot, position: Position): string | null {
  const line = snapshot.script.document.lineAt(position.line);
  if (line === undefined) return null;
  const findings = snapshot.findings().filter(({ place }) => place.line === line);
  const paragraphs = [
    ...findings.flatMap((finding) => findingParagraphs(finding, snapshot)),
    ...about(snapshot, position),
  ];
  return paragraphs.length === 0 ? null : paragraphs.join('\n\n');
}

function about(snapshot: Snapshot, position: Position): readonly string[] {
  const line = snapshot.script.document.lineAt(position.line);
  if (line === undefined) return [];
  if (line.settingPath !== null) return parameterText(snapshot, line.settingPath, line.section.pack);
  const under = underCursor(snapshot, position);
  if (under?.kind === 'pack') return sectionText(snapshot, `pack.${under.name}`);
  return line.statement.kind === 'section' ? sectionText(snapshot, line.statement.path.text) : [];
}

/** A parameter by its catalogue name or by a path that a script would write; as Markdown. */
export function explainParameter(catalog: Catalog, path: string): string | null {
  const known = catalog.parameters.get(path) ?? catalog.parameter(path);
  if (known === undefined) return null;
  const choices = catalog.choices(known.parameter);
  return [
    parameterTitle(known, known.parameter.kind === 'bare' ? path : known.name),
    ...memberParagraphs(path, catalog),
    ...parameterParagraphs(known, choices),
    parameterFooter(known),
  ].join('\n\n');
}

/** A check by its id; as Markdown. */
export function explainCheck(catalog: Catalog, id: string): string | null {
  const check = catalog.check(id);
  return check === undefined ? null : checkParagraphs(check, catalog).join('\n\n');
}
