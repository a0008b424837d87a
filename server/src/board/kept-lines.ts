import type { Script } from '../craft/script';
import type { Profile } from './profile/profile';
import { readLine } from './read-lines';

/** A line of a board's text that no parameter stands for; a comment of the script keeps it. */
export interface KeptLine {
  readonly group: string;
  readonly text: string;
}

const kept = /^\s*# kept for ([a-z][a-z0-9-]*) \[([^\]]*)\]: (.*)$/;

/** The comment that keeps a line of a board's text in a script. */
export function keptComment(board: string, { group, text }: KeptLine): string {
  return `# kept for ${board} [${group.replaceAll(']', '')}]: ${text.trim()}`;
}

/** What a script keeps for a board: only lines that are settings of its form, so that nothing else can slip through. */
export function keptLines(script: Script, profile: Profile): readonly KeptLine[] {
  const found: KeptLine[] = [];
  for (const line of script.document.lines()) {
    const match = kept.exec(line.text);
    if (match === null || match[1] !== profile.name) continue;
    const [, , group = '', text = ''] = match;
    if (readLine(profile, text, group).kind === 'setting') found.push({ group, text });
  }
  return found;
}
