import type { Catalog, FoundParameter } from '../catalog/catalog';
import { suggestParameters, suggestSections } from '../catalog/suggest';
import type {
  ConstantStatement,
  Problem,
  SectionStatement,
  SettingStatement,
  ValueNode,
} from '../language/ast';
import { lateProblem, problem, replacement } from '../language/problem';
import type { ScriptLine } from '../language/script-line';
import { hasReferences, referencesIn } from '../language/value-nodes';
import { evaluate } from './evaluate';
import { interpret } from './interpret';
import { isExpression } from './interpret-number';
import type { Scope } from './scope';

/** What can be said of a line without the rest of the craft. */
export interface LineCheck {
  readonly problems: readonly Problem[];
  /** Whether more can be said with the rest of the craft, because the value holds names. */
  readonly isDynamic: boolean;
  /** Whether it sets something that the catalogue does not know. */
  readonly isUnknown?: boolean;
}

/** Checks one line by itself. The same line under the same catalogue always gives the same answer. */
export function checkLine(line: ScriptLine, catalog: Catalog): LineCheck {
  const { statement } = line;
  const own = statement.problems;
  switch (statement.kind) {
    case 'setting':
      return joined(own, checkSetting(line, statement, catalog));
    case 'constant':
      return joined(own, checkConstant(statement));
    case 'section':
      return joined(own, checkSection(statement, catalog));
    default:
      return { problems: own, isDynamic: false };
  }
}

/** What was misread already is not called wrong a second time at the same place. */
function joined(own: readonly Problem[], check: LineCheck): LineCheck {
  const more = check.problems.filter(({ start }) => own.every((one) => one.start !== start));
  return { ...check, problems: more.length === 0 ? own : [...own, ...more] };
}

const silent: LineCheck = { problems: [], isDynamic: false };

/** Nothing is known by itself: names are looked up only together with the craft. */
export const noNames: Scope = {
  constant: () => ({ kind: 'unknown-value' }),
  parameter: () => ({ kind: 'unknown-value' }),
};

function checkSetting(line: ScriptLine, statement: SettingStatement, catalog: Catalog): LineCheck {
  if (statement.equals < 0) return silent; // no setting at all, perhaps, and the line has been reported
  const path = line.settingPath;
  const section = line.section.path;
  if (path === null || section === null) return silent;
  // Whatever the board writes is right.
  if (statement.value?.kind === 'bare') return silent;
  // Under an unknown section the header has been reported; its lines would only repeat that.
  if (section !== '' && !catalog.isSection(section)) return { ...silent, isUnknown: true };
  const found = catalog.parameter(path);
  if (found === undefined)
    return {
      problems: [unknownName(statement, section, path, catalog)],
      isDynamic: false,
      isUnknown: true,
    };
  if (statement.value === null) return silent;
  if (isDynamicLine(line, catalog)) return { problems: [], isDynamic: true };
  const { problems } = interpret(statement.value, found, noNames, staticWords(found, catalog));
  return { problems, isDynamic: false };
}

/** Whether a line's value can be judged only together with the rest of the craft. */
export function isDynamicLine(line: ScriptLine, catalog: Catalog): boolean {
  const { statement, settingPath } = line;
  if (statement.kind === 'constant') {
    const { value } = statement;
    return value !== null && isExpression(value) && hasReferences(value);
  }
  if (statement.kind !== 'setting' || statement.value === null || settingPath === null) return false;
  const found = catalog.parameter(settingPath);
  return found !== undefined && needsCraft(statement.value, found);
}

/** Words that the catalogue alone can name; null where the craft's board or packs decide. */
export function staticWords(
  { parameter }: Pick<FoundParameter, 'parameter'>,
  catalog: Catalog,
): readonly string[] | null {
  if (parameter.kind !== 'word' && parameter.kind !== 'words') return null;
  if (parameter.choicesFrom === 'ports' || parameter.choicesFrom === 'packs') return null;
  return catalog.choices(parameter).map((choice) => choice.name);
}

function needsCraft(value: ValueNode, { parameter }: FoundParameter): boolean {
  switch (parameter.kind) {
    case 'word':
    case 'words':
      return parameter.choicesFrom === 'ports' || parameter.choicesFrom === 'packs';
    case 'quantity':
    case 'count':
      return [...referencesIn(value)].some(
        ({ path }) => !(parameter.orWords?.some((word) => word.name === path.text) ?? false),
      );
    case 'range':
    case 'curve':
    case 'place':
      return hasReferences(value);
    default:
      return false;
  }
}

function unknownName(statement: SettingStatement, section: string, path: string, catalog: Catalog): Problem {
  const { path: span } = statement;
  const missing = catalog.explainMissing(path);
  if (missing?.reason === 'makes-no-sense') {
    const { section: where, word, why } = missing;
    const { start } = span;
    const end = statement.value?.end ?? statement.equals + 1;
    const fixes = [{ title: `Take ${word} out`, edits: [{ start, end, newText: '' }] }];
    return problem('line/means-nothing-here', span, { name: word, section: where, why }, fixes);
  }
  return lateProblem('line/unknown-name', span, { name: path }, () => {
    const suggestions = suggestParameters(catalog, path, section);
    const fixes = suggestions.flatMap(({ written }) =>
      written === null ? [] : [replacement('Write {to}', span, written)],
    );
    const elsewhere = suggestions.flatMap(({ written, path: whole }) => (written === null ? [whole] : []));
    return { suggestion: suggestions.map(({ path: name }) => name).join(', '), fixes, elsewhere };
  });
}

function checkConstant({ value }: ConstantStatement): LineCheck {
  if (value === null) return silent;
  if (!isExpression(value)) {
    return { problems: [problem('line/constant-value', value)], isDynamic: false };
  }
  if (hasReferences(value)) return { problems: [], isDynamic: true };
  const { problem: failed } = evaluate(value, noNames);
  return { problems: failed === null ? [] : [failed], isDynamic: false };
}

function checkSection({ path }: SectionStatement, catalog: Catalog): LineCheck {
  if (catalog.isSection(path.text)) return silent;
  const unknown = lateProblem('line/unknown-section', path, { name: path.text }, () => {
    const near = suggestSections(catalog, path.text);
    return {
      suggestion: near.join(', '),
      fixes: near.map((name) => replacement('Write [{to}]', path, name)),
    };
  });
  return { problems: [unknown], isDynamic: false };
}
