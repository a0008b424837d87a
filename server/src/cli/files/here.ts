import { URI } from 'vscode-uri';
import { builtInBundle } from '../../catalog/built-in';
import type { Catalog } from '../../catalog/catalog';
import type { OnFault } from '../../checks/checker';
import { NodeFiles } from '../../file-system/node-files';
import { textBeside } from '../../file-system/read-file';
import { AdditionFiles } from '../../workspace/addition-files';
import { Workspace } from '../../workspace/workspace';
import { checkedAdditions } from '../report/checked-additions';
import type { CheckedFile } from '../report/checked-file';

/** The current folder as a workspace: its files, and the catalogue with what its folder `propsoff` adds. */
export interface Here {
  readonly files: NodeFiles;
  readonly additions: AdditionFiles;
}

export async function currentFolder(): Promise<Here> {
  const root = URI.file(process.cwd()).toString();
  const files = new NodeFiles([root]);
  const additions = new AdditionFiles(builtInBundle(textBeside), files);
  await additions.setRoots([root]);
  return { files, additions };
}

/** A workspace with what the current folder adds; boards that its scripts name are read as they are opened. */
export function workspaceOf({ files, additions }: Here, onFault: OnFault = () => {}): Workspace {
  const workspace = new Workspace({ catalog: additions.catalog, fileSystem: files, onFault });
  additions.onAsked = () => {
    void additions.readAsked().then((isOther) => {
      if (isOther) workspace.useCatalog(additions.catalog);
    });
  };
  return workspace;
}

/** What somebody says with the catalogue, once all boards that they ask it for have been read. */
export async function withBoards<T>(
  { additions }: Pick<Here, 'additions'>,
  say: (catalog: Catalog) => T,
): Promise<T> {
  for (;;) {
    const { catalog } = additions;
    const said = say(catalog);
    await additions.readAsked();
    if (additions.catalog === catalog) return said;
  }
}

/** The files that add to the catalogue and have problems. */
export function faultyAdditions({ additions }: Here): readonly CheckedFile[] {
  return checkedAdditions(additions).filter(({ findings }) => findings.length > 0);
}
