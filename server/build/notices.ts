/**
 * The licence notices of every package whose code is in a bundle. They are gathered from what the bundler says
 * it put in, so that a new dependency cannot ship without its licence.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Metafile } from 'esbuild';

const head = `Propsoff contains code of the packages below, each under its own licence, which follows its name.
`;

/** What a licence file may be called: with or without an ending, in either spelling. */
const licenceName = /^(licen[cs]e|copying|notice|third-?party-?notices?)([.-].*)?$/i;

interface PackageFacts {
  readonly name: string;
  readonly version: string;
  readonly license?: string;
}

/** The files of which something is left in a bundle, after what is not used was shaken out. */
export function bundledInputs(metafile: Metafile | undefined): readonly string[] {
  return Object.values(metafile?.outputs ?? {}).flatMap(({ inputs }) =>
    Object.entries(inputs)
      .filter(([, { bytesInOutput }]) => bytesInOutput > 0)
      .map(([path]) => path),
  );
}

/** The folder of the package that a file belongs to; undefined for our own files. */
function packageFolder(path: string): string | undefined {
  return /^.*\bnode_modules\/(?:@[^/]+\/)?[^/]+/.exec(path)?.[0];
}

function factsOf(folder: string): PackageFacts {
  return JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as PackageFacts;
}

const isReadme = (file: string) => /^readme\.md$/i.test(file);

/** Some packages have their licence's whole text under a heading of what one reads first. */
function licencesIn(texts: readonly string[]): readonly string[] {
  return texts.flatMap((text) => {
    const licence = /^#+ *licen[cs]e *$/im.exec(text);
    const below = licence === null ? '' : text.slice(licence.index + licence[0].length);
    return /copyright/i.test(below) ? [below.replace(/\n\[\d+\]: \S+/g, '').trim()] : [];
  });
}

function noticeOf(folder: string): string {
  const { name, version, license } = factsOf(folder);
  const files = readdirSync(folder)
    .filter((file) => licenceName.test(file))
    .sort();
  const read = (file: string) => readFileSync(join(folder, file), 'utf8').replaceAll('\r\n', '\n').trim();
  const texts =
    files.length > 0 ? files.map(read) : licencesIn(readdirSync(folder).filter(isReadme).map(read));
  if (texts.length === 0 || license === undefined) {
    throw new Error(`${name} ${version} is bundled but has no licence file, or does not name its licence`);
  }
  return `${name} ${version} (${license})\n\n${texts.join('\n\n')}\n`;
}

/** Sorted, each package once: the same bundles give the same text. */
export function noticesOf(root: string, inputs: readonly string[]): string {
  const folders = new Set(inputs.map((path) => packageFolder(path)).filter((folder) => folder !== undefined));
  const notices = [...folders].map((folder) => noticeOf(join(root, folder)));
  const rule = `\n${'-'.repeat(78)}\n\n`;
  return [head, ...new Set(notices.sort())].join(rule);
}
