import type { Catalog } from '../../src/catalog/catalog';
import type { Bundle } from '../../src/catalog/model/bundle';
import { ownGroup } from '../../src/language/path-text';
import { repeated } from './places';

/** Groups that the job forgets, sections that there are not, and lines of parts that set nothing. */
export function jobProblems(bundle: Bundle, catalog: Catalog): readonly string[] {
  const { order, parts } = bundle;
  const said = (what: string) => `schemas/job.json: ${what}`;
  const isSection = (path: string) => catalog.isSection(path.replace(/<[a-z]+>/, exampleOf));
  const groups = [...catalog.groups.keys()].filter((name) => name !== ownGroup);
  return [
    ...repeated(order).map((path) => said(`${path} stands there twice`)),
    ...order.filter((path) => !isSection(path)).map((path) => said(`there is no section ${path}`)),
    ...groups
      .filter((name) => !order.some((path) => path.split('.')[0] === name))
      .map((name) => said(`the order has no section of ${name}`)),
    ...repeated(parts.map(({ title }) => title)).map((title) => said(`${title} stands there twice`)),
    ...parts.flatMap(({ title, lines }) => {
      let section = '';
      return lines.flatMap((line, index) => {
        const header = /^\[(.+)\]$/.exec(line)?.[1];
        if (header !== undefined) {
          section = header.replace(/[<{][a-z]+[>}]/, exampleOf);
          return catalog.isSection(section) ? [] : [said(`${title}: there is no section ${header}`)];
        }
        if (index === 0) return [said(`${title}: the first line is a header`)];
        const name = /^([a-z.-]+) = \S/.exec(line)?.[1] ?? line;
        const known = catalog.parameter(`${section}.${name}`) !== undefined;
        return known ? [] : [said(`${title}: there is no setting ${section}.${name}`)];
      });
    }),
  ];
}

function exampleOf(placeholder: string): string {
  return placeholder === '<number>' ? '1' : 'first';
}
