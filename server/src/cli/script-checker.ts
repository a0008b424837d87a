import { URI } from 'vscode-uri';
import type { Finding } from '../checks/finding';
import type { Craft } from '../craft/craft';
import { resolveInclude } from '../craft/include-path';
import { inputKeys } from '../craft/keys';
import { Workspace } from '../workspace/workspace';
import { boardTextEnding, checkedBoardText, translatedText } from './checked-board-text';
import { type CheckedFile, checkedScript } from './checked-file';
import type { Here } from './here';
import { type ScriptFile, shown } from './scripts';

/** What findings are wanted, and how. */
export interface CheckOptions {
  /** Only findings that hold with this pack. */
  readonly pack: string | undefined;
  /** Every path is a text of this board. */
  readonly board: string | undefined;
  /** Whether the report tells fixes: each may cost a guess. */
  readonly hasFixes: boolean;
}

/** What came of one script, as plain data. */
export interface CheckedScript {
  readonly file: CheckedFile;
  readonly packs: readonly string[];
  /** URIs of the script and of all that it includes, also of what is missing. */
  readonly read: readonly string[];
  /** What failed in ourselves and was left out, a line each. */
  readonly faults: readonly string[];
}

/** Checks scripts one after the other: what one craft took to be computed is free again before the next. */
export class ScriptChecker {
  private readonly workspace: Workspace;
  private faults: string[] = [];

  constructor(
    { files, additions }: Here,
    private readonly options: CheckOptions,
  ) {
    this.workspace = new Workspace({
      catalog: additions.catalog,
      host: files,
      isForOneLook: true,
      onFault: (what, error) => void this.faults.push(`${what} failed and was left out: ${String(error)}`),
    });
  }

  async check({ uri, path, text }: ScriptFile): Promise<CheckedScript> {
    const { workspace } = this;
    const { catalog } = workspace;
    const { pack, board, hasFixes } = this.options;
    const isBoardText = board !== undefined || path.endsWith(boardTextEnding);
    const translation = isBoardText ? translatedText(catalog, text, board ?? null) : null;
    const { craft } = workspace.openScript(uri, isBoardText ? (translation?.script ?? '') : text, 0);
    await workspace.settled();
    const isAskedFor = (finding: Finding) => pack === undefined || (finding.pack ?? pack) === pack;
    const findings = workspace.findings(uri).filter(isAskedFor);
    const pathFor = (other: string) => (other === uri ? path : shownUri(other));
    const file = isBoardText
      ? checkedBoardText(path, translation, findings, catalog)
      : checkedScript(path, findings, pathFor, hasFixes);
    const checked = { file, packs: craft.packs(), read: readBy(craft), faults: this.faults };
    this.faults = [];
    workspace.close(uri);
    return checked;
  }
}

/** A script and whatever it includes, whether it is there or not. */
function readBy(craft: Craft): readonly string[] {
  return craft.layers().layers.flatMap(({ script }) => [
    script.uri,
    ...script.lines(inputKeys.include).flatMap(({ statement }) => {
      const uri = statement.kind === 'include' ? resolveInclude(script.uri, statement.path.value) : null;
      return uri ?? [];
    }),
  ]);
}

/** A script's URI as a path for people. */
function shownUri(uri: string): string {
  return shown(URI.parse(uri).fsPath);
}
