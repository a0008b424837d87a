import { URI, Utils } from 'vscode-uri';
import { canonicalUri } from '../workspace/canonical-uri';

/** The folders of a workspace. Scripts may include only what lies below the one that holds them. */
export class Roots {
  /** Those of the workspace. */
  readonly all: readonly string[];
  /** Folders of scripts that lie in none of the roots: each is the workspace of its own scripts. */
  private readonly alone = new Set<string>();

  constructor(roots: readonly string[] = []) {
    this.all = roots.map(canonicalUri);
  }

  /** Why a script may not include this file, as the end of a sentence; null when it may. */
  refusal(uri: string, fromUri: string): string | null {
    return this.rootsFor(fromUri).some((root) => isBelow(uri, root)) ? null : 'it lies outside the workspace';
  }

  /** Those that a file lies below, folders that stand alone among them. */
  holding(uri: string): readonly string[] {
    return [...this.all, ...this.alone].filter((root) => isBelow(uri, root));
  }

  /** Without a folder that holds the script, its own folder is the workspace. */
  rootsFor(fromUri: string): readonly string[] {
    const holding = this.all.filter((root) => isBelow(fromUri, root));
    if (holding.length > 0) return holding;
    const own = canonicalUri(Utils.dirname(URI.parse(fromUri)).toString());
    this.alone.add(own);
    return [own];
  }
}

/** Whether a file lies below a folder of the same file system. */
export function isBelow(uri: string, root: string): boolean {
  const [file, top] = [URI.parse(uri), URI.parse(root)];
  if (file.scheme !== top.scheme || file.authority !== top.authority) return false;
  return file.path.startsWith(`${top.path.replace(/\/$/, '')}/`);
}
