import { URI } from 'vscode-uri';
import { builtInBundle } from '../../catalog/built-in';
import { NodeFiles } from '../../file-system/node-files';
import { textBeside } from '../../file-system/read-file';
import { AdditionFiles } from '../../workspace/addition-files';
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

/** The files that add to the catalogue and have problems. */
export function faultyAdditions({ additions }: Here): readonly CheckedFile[] {
  return checkedAdditions(additions).filter(({ findings }) => findings.length > 0);
}
