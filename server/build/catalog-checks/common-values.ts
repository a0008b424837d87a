import type { Catalog } from '../../src/catalog/catalog';
import type { Bundle } from '../../src/catalog/model/bundle';
import type { CommonRow, CommonValue } from '../../src/catalog/model/common-values';
import { holdsAnEnd } from '../../src/catalog/value-ends';
import { checkLine } from '../../src/craft/line-check';
import { Document } from '../../src/language/document';
import { repeated } from './places';

/** Common values that a line would be refused for, and ends of ranges that do not say that they are common. */
export function commonValueProblems(bundle: Bundle, catalog: Catalog): readonly string[] {
  const named = bundle.common.flatMap(({ of }) => of);
  return [
    ...repeated(named).map((name) => said(name, 'stands there twice')),
    ...bundle.common.flatMap((row) => row.of.flatMap((name) => rowProblems(row, name, catalog))),
  ];
}

function said(name: string, what: string): string {
  return `schemas/common-values.json: ${name}: ${what}`;
}

function rowProblems(row: CommonRow, name: string, catalog: Catalog): readonly string[] {
  const known = catalog.parameters.get(name);
  if (known === undefined) return [said(name, 'there is no such parameter')];
  const { values = [], from, none, source } = row;
  const hasValues = values.length > 0 || from !== undefined;
  const purposes = wordsOf(catalog, 'craft.purpose');
  return [
    ...(hasValues || none !== undefined ? [] : [said(name, 'has neither values nor a reason for none')]),
    ...(hasValues === (source !== undefined)
      ? []
      : [said(name, 'values have a source, and nothing else has')]),
    ...repeated(values.map(({ value, members = [] }) => `${value} ${members.join(' ')}`.trim())).map(
      (value) => said(name, `${value} stands there twice`),
    ),
    ...values.flatMap((one) => [
      ...valueProblems(one, name, catalog),
      ...unknown(one.purposes, purposes).map((word) => said(name, `${word} is no purpose`)),
      ...unknown(one.chemistries, [...catalog.chemistries.keys()]).map((word) =>
        said(name, `${word} is no chemistry`),
      ),
      ...(holdsAnEnd(known, one.value) === (one.end === true)
        ? []
        : [said(name, `${one.value} ${one.end === true ? 'is no end' : 'is an end, and does not say so'}`)]),
    ]),
  ];
}

function wordsOf(catalog: Catalog, name: string): readonly string[] {
  const found = catalog.parameter(name);
  return found === undefined ? [] : catalog.choices(found.parameter).map((choice) => choice.name);
}

function unknown(said: readonly string[] = [], known: readonly string[]): readonly string[] {
  return said.filter((one) => !known.includes(one));
}

/** As its line would be read, for each member that it is for. */
function valueProblems({ value, members }: CommonValue, name: string, catalog: Catalog): readonly string[] {
  return pathsOf(name, members, catalog).flatMap((path) => {
    const [line] = Document.of(`${path} = ${value}`).lines();
    if (line === undefined) return [];
    if (catalog.parameter(path) === undefined) return [said(name, `there is no ${path}`)];
    return checkLine(line, catalog).problems.map(({ id }) => said(name, `${value} is refused: ${id}`));
  });
}

function pathsOf(name: string, members: readonly string[] | undefined, catalog: Catalog): readonly string[] {
  const open = /^(.*?)\.<[a-z]+>/.exec(name)?.[1];
  if (open === undefined) return [name];
  const known =
    members ??
    catalog
      .members(open)
      .slice(0, 1)
      .map((member) => member.name);
  return (known.length === 0 ? ['one'] : known).map((member) => name.replace(/<[a-z]+>/, member));
}
