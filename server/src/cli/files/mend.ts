import { URI } from 'vscode-uri';
import type { Finding } from '../../checks/report/finding';
import { fixTitle } from '../../checks/report/render';
import { fixesAtOnce } from '../../features/fix-edits';
import { withEdits } from '../../features/text-edits';
import { reasonOf } from '../../file-system/reasons';
import { replaceFile } from '../../file-system/replace-file';
import type { Workspace } from '../../workspace/workspace';
import type { ScriptFile } from './scripts';

/** A script with fixes made, and what they were, in the order of their making. */
export interface MendedScript {
  readonly text: string;
  readonly titles: readonly string[];
}

/** One fix may make room for another; what goes on and on is no help. */
const mostRounds = 10;

/**
 * Makes fixes in a text till there are no more. None is kept that brings another must-fix. `takesFirst`: of a finding
 * with several fixes the first one is made.
 */
export async function mendedText(
  workspace: Workspace,
  { uri, text }: Pick<ScriptFile, 'uri' | 'text'>,
  takesFirst: boolean,
): Promise<MendedScript> {
  const titles: string[] = [];
  let found = await checked(workspace, uri, text);
  for (let round = 0; round < mostRounds; round += 1) {
    const { fixes, edits } = fixesAtOnce(found.script, found.findings, { takesFirst });
    if (edits.length === 0) break;
    const next = await checked(workspace, uri, withEdits(found.script.document, edits));
    if (mustFixes(next) > mustFixes(found)) break;
    titles.push(...fixes.map(fixTitle));
    found = next;
  }
  return { text: found.script.document.text(), titles };
}

async function checked(workspace: Workspace, uri: string, text: string) {
  const { script } = workspace.openScript(uri, text, 0);
  await workspace.settled();
  return { script, findings: workspace.findings(uri) };
}

function mustFixes({ findings }: { readonly findings: readonly Finding[] }): number {
  return findings.filter(({ level }) => level === 'must-fix').length;
}

/** Why a file could not be written; null where it was, or says the same. */
export async function written({ uri, mark, text }: ScriptFile, now: string): Promise<string | null> {
  if (now === text) return null;
  try {
    await replaceFile(URI.parse(uri).fsPath, mark + text, mark + now);
    return null;
  } catch (error) {
    return reasonOf(error, 'written');
  }
}
