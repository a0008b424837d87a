import type { Craft } from '../craft/craft';
import type { Script } from '../craft/script';
import type { Workspace } from './workspace';

/** Scripts of the workspace that are no part of a craft, as far as they have been read. Boards' texts are none. */
export function otherScripts(workspace: Workspace, craft: Craft): readonly Script[] {
  return workspace.allRead().filter(({ isBoardText, uri }) => !isBoardText && !craft.includes(uri));
}
