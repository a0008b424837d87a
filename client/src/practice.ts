import * as vscode from 'vscode';

/**
 * Slips that the practice craft has in place of right lines: one of each kind that pilots make. A name mistyped,
 * two voltages and two directions that are right one by one and wrong together. Each has a fix that mends it whole.
 */
const slips: readonly (readonly [right: string, wrong: string])[] = [
  ['\ntilt-limit     =', '\ntilt-limt      ='],
  ['\nwarn-cell     = 3.6 V', '\nwarn-cell     = 3.3 V'],
  ['\nspin           = inward\n', '\nspin           = outward\n'],
];

/** The first line says what it is for, also to someone who finds it saved. */
const heading = `# ${vscode.l10n.t('For practice: three slips are in here. Mend them; nothing of it is for a real board.')}\n`;

/**
 * The first craft with the slips in it.
 * @throws {Error} if it has no place for one: a practice with nothing to find would teach nothing.
 */
export function withSlips(firstCraft: string): string {
  return slips.reduce(
    (text, [right, wrong]) => {
      if (!text.includes(right)) throw new Error(`the first craft has no line like ${right.trim()}`);
      return text.replace(right, wrong);
    },
    heading + firstCraft.slice(firstCraft.indexOf('\n') + 1),
  );
}
