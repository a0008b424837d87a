/**
 * Completes a folder that holds the packages for the editor and for npm: with the page, what the released files are made
 * of, notes and checksums. `tsx server/build/release/release.ts <folder>`; without a folder it only says whether this
 * version has notes. The same source gives the same bytes.
 */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { zipSync } from 'fflate';
import { name, version } from '../../../package.json';
import { description } from '../../../package.nls.json';
import { notesOf } from './notes';
import { packagesIn, type Sbom, sbomOf } from './sbom';

const root = join(__dirname, '../../..');
const read = (path: string) => readFileSync(join(root, path));
const pageFolder = 'dist/page';
const page = `${pageFolder}/propsoff.html`;

/** What each file is for, by the end of its name. */
const told: readonly (readonly [file: string, what: string])[] = [
  ['.html', 'the page: open it in a browser, on a desk or a phone; nothing is installed, nothing is sent'],
  ['-page.zip', 'the same for a web server, with what lets it work without a network after the first visit'],
  ['.vsix', 'the extension for Visual Studio Code: Install from VSIX… in the Extensions view'],
  [
    '.tgz',
    'the command line: `npx --yes ./{file} check my.craft` in the folder where it lies, with Node 20 or later',
  ],
  ['.cdx.json', 'every package whose code is inside, with versions, licences and hashes (CycloneDX)'],
  ['-notices.txt', 'the licences of these packages'],
];

function notes(): string {
  return notesOf(read('CHANGELOG.md').toString('utf8'), version);
}

function release(folder: string): void {
  const said = notes();
  if (!existsSync(join(root, page))) throw new Error(`${page} is not there: npm run page makes it`);
  const write = (ending: string, content: string | Uint8Array) =>
    writeFileSync(join(folder, `${name}-${version}${ending}`), content);
  write('.html', read(page));
  write('-page.zip', zipped(pageFolder));
  const notices = ['dist/NOTICES.txt', `${pageFolder}/NOTICES.txt`].map((path) =>
    read(path).toString('utf8'),
  );
  // The page's has the others' as well: its own scripts have more in them.
  write('-notices.txt', notices.at(-1) ?? '');
  const args = ['sbom', '--sbom-format=cyclonedx', '--package-lock-only'];
  const listed = execFileSync('npm', args, { cwd: root, encoding: 'utf8', maxBuffer: 1e8 });
  const bundled = [...new Set(notices.flatMap(packagesIn))];
  const sbom = sbomOf(JSON.parse(listed) as Sbom, bundled, name, description);
  write('.cdx.json', `${JSON.stringify(sbom, undefined, 2)}\n`);
  writeFileSync(join(folder, 'NOTES.md'), notesFile(said));
  writeFileSync(join(folder, 'SHA256SUMS'), checksums(folder));
}

function zipped(folder: string): Uint8Array {
  const names = readdirSync(join(root, folder)).sort();
  const files = Object.fromEntries(names.map((file) => [file, read(`${folder}/${file}`)]));
  // The first moment that a zip can hold, in whatever time zone.
  return zipSync(files, { level: 9, mtime: new Date(1980, 0, 1) });
}

function notesFile(said: string): string {
  const files = told.map(([ending, what]) => {
    const file = `${name}-${version}${ending}`;
    return `- \`${file}\`: ${what.replace('{file}', file)}`;
  });
  return [
    `# Propsoff ${version}`,
    '',
    ...files,
    '',
    '`sha256sum -c SHA256SUMS` says whether the files arrived as they were made.',
    '',
    said,
  ].join('\n');
}

/** As `sha256sum -c` reads them. */
function checksums(folder: string): string {
  const names = readdirSync(folder)
    .filter((file) => file !== 'SHA256SUMS')
    .sort();
  const sumOf = (file: string) =>
    createHash('sha256')
      .update(readFileSync(join(folder, file)))
      .digest('hex');
  return names.map((file) => `${sumOf(file)}  ${file}\n`).join('');
}

try {
  const [folder] = process.argv.slice(2);
  if (folder === undefined) notes();
  else release(folder);
} catch (error) {
  console.error(`[propsoff] ${error instanceof Error ? error.message : String(error)}`);
  process.exitCode = 1;
}
