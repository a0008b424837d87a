import type { Catalog } from '../../catalog/catalog';
import type { KnownParameter } from '../../catalog/known-parameter';
import { allowedText } from '../../features/hover/parameter-text';
import { parametersEndingIn } from './explain-lists';

/** What the catalogue says about a name, for programs; null where it knows none such. */
export function explained(catalog: Catalog, name: string) {
  return explainedCheck(catalog, name) ?? explainedParameter(catalog, name) ?? explainedMany(catalog, name);
}

function explainedCheck(catalog: Catalog, id: string) {
  const check = catalog.check(id);
  if (check === undefined) return null;
  const { level, title, message, advice, source } = check;
  return {
    version: 1,
    kind: 'check',
    name: id,
    title,
    level,
    message,
    advice,
    rule: check.by === 'code' ? (check.rule ?? null) : null,
    when: check.by === 'data' ? check.when : [],
    source,
  } as const;
}

/** One by its name, or the only one that ends in the words given. */
function explainedParameter(catalog: Catalog, name: string) {
  const ending = parametersEndingIn(catalog, name);
  const exact = catalog.parameters.get(name) ?? catalog.parameter(name);
  const isListed = catalog.groups.has(name) || catalog.parametersUnder(name).length > 0;
  const known = exact ?? (ending.length === 1 && !isListed ? ending[0] : undefined);
  if (known === undefined) return null;
  const { parameter } = known;
  return {
    version: 1,
    kind: 'parameter',
    name: known.name,
    title: parameter.title,
    summary: parameter.summary,
    takes: allowedText(parameter),
    assumed: parameter.default?.value ?? null,
    choices: catalog.choices(parameter).map(({ name: word, summary }) => ({ name: word, summary })),
    risk: parameter.risk,
    prove: parameter.prove,
    stage: parameter.stage,
    needs: parameter.needs,
    related: parameter.related,
    source: parameter.source,
  } as const;
}

/** A group, a section, or a last word that several share. */
function explainedMany(catalog: Catalog, name: string) {
  const group = catalog.groups.get(name);
  const below = group?.parameters ?? catalog.parametersUnder(name).map(({ known }) => known);
  const found = below.length > 0 ? below : parametersEndingIn(catalog, name);
  if (found.length === 0) return null;
  const summary = group?.summary ?? null;
  return { version: 1, kind: 'parameters', name, summary, parameters: found.map(listed) } as const;
}

function listed({ name, parameter }: KnownParameter) {
  return { name, title: parameter.title };
}
