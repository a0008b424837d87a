/** What is said of a version when it is handed out: its section of the change log. */

/**
 * The text below the heading of a version.
 * @throws {Error} where the change log has none, or an empty one.
 */
export function notesOf(changelog: string, version: string): string {
  const sections = changelog.split(/^(?=## )/m);
  const section = sections.find((text) => text.startsWith(`## [${version}] - `));
  const [, notes = ''] = /^[^\n]*\n([\s\S]*)$/.exec(section ?? '') ?? [];
  if (notes.trim() !== '') return `${notes.trim()}\n`;
  throw new Error(
    `CHANGELOG.md says nothing of ${version}: give it a section "## [${version}] - <date>" with what changed`,
  );
}
