import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** A class of faults that other tools have had, with the tests that name it. */
export interface FaultClass {
  readonly id: string;
  /** In a few words. */
  readonly what: string;
  /** The files with titles that name it. */
  readonly tests: readonly string[];
}

const suites = ['unit', 'reference', 'sweeps', 'protocol', 'workbench/suite', 'workbench/page'] as const;

/** Every class of `test/fault-classes.json`; a test shows that it covers one by its id in its title. */
export function faultClasses(root: string): readonly FaultClass[] {
  const classes = JSON.parse(readFileSync(join(root, 'test/fault-classes.json'), 'utf8')) as Record<
    string,
    string
  >;
  const titles = suites.flatMap((suite) => titlesIn(join(root, 'test'), suite));
  return Object.entries(classes).map(([id, what]) => {
    const named = titles.filter(({ title }) => idsIn(title).includes(id));
    return { id, what, tests: [...new Set(named.map(({ file }) => file))] };
  });
}

/** Ids that titles name and that are no class. */
export function unknownIds(root: string): readonly string[] {
  const known = new Set(faultClasses(root).map(({ id }) => id));
  const named = suites
    .flatMap((suite) => titlesIn(join(root, 'test'), suite))
    .flatMap(({ title }) => idsIn(title));
  return [...new Set(named)].filter((id) => !known.has(id));
}

interface Title {
  readonly file: string;
  readonly title: string;
}

function titlesIn(tests: string, suite: string): readonly Title[] {
  const folder = join(tests, suite);
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts'))
    .sort()
    .flatMap((name) => {
      const text = readFileSync(join(folder, name), 'utf8');
      const titles = text.matchAll(/\b(?:describe|it)\(\s*(['"`])((?:\\.|(?!\1).)*)\1/gs);
      return [...titles].map(([, , title = '']) => ({
        file: `${suite}/${name.replaceAll('\\', '/')}`,
        title,
      }));
    });
}

/** The ids in parentheses at the end of a title: `(A05, D01)`, also behind other words: `(seed 3; D02)`. */
function idsIn(title: string): readonly string[] {
  const [, last = ''] = /\(([^()]*)\)$/.exec(title) ?? [];
  return last.match(/\b[A-K]\d{2}\b/g) ?? [];
}

/** Every class with the tests that cover it, as a page in Markdown: `test/FAULT-CLASSES.md`. */
export function faultClassesPage(root: string): string {
  const rows = faultClasses(root).map(
    ({ id, what, tests }) => `- ${id}, ${what}: ${tests.map((file) => `\`${file}\``).join(', ')}`,
  );
  return `${beforeClasses}\n\n${rows.join('\n')}\n`;
}

const beforeClasses = `# Faults that other tools have had

Classes of faults from public reports about language tools in general, in our own words ([fault-classes.json](fault-classes.json)). A test covers one by its id at the end of its title. \`npm run reference\` makes this page from the titles; a test fails while they differ.`;
