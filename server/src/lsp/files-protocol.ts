import { NotificationType, RequestType } from 'vscode-languageserver-protocol';
import type { FoundScripts } from '../workspace/file-system';
import { OwnRequest } from './own-message';
import { object, text } from './requests/form';

export type { FoundScripts, Unread } from '../workspace/file-system';

/** A file that the client wrote, perhaps where nobody watches; answered once it counts. */
export const writtenRequest = new OwnRequest<{ readonly uri: string }, null>(
  'propsoff/written',
  object({ uri: text }),
);

/**
 * What a client says under `experimental.propsoff` of its capabilities: which of our own messages it takes. One that
 * says nothing of it, as all editors but ours, gets none of them.
 */
export interface OwnAbilities {
  /** `propsoff/checked`. */
  readonly checked: boolean;
  /** `propsoff/readFile`, `propsoff/listFolder` and `propsoff/findScripts`. */
  readonly files: boolean;
  /** The commands of our client, behind code lenses. */
  readonly commands: boolean;
}

/** Server to client: a script has been checked again; ask for what you show of it. */
export const checkedNotification = new NotificationType<{ readonly uri: string }>('propsoff/checked');

/** A file as the editor's own file system has it. */
export type FileAnswer =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'missing' }
  | { readonly kind: 'too-long' }
  /** `why`: the end of a sentence. */
  | { readonly kind: 'unreadable'; readonly why: string };

/** Server to client: a file that the server can't read itself. `longest`: in bytes; a longer one is refused. */
export const readFileRequest = new RequestType<
  { readonly uri: string; readonly longest: number },
  FileAnswer,
  void
>('propsoff/readFile');

/** Server to client: names of the files right in a folder; none where there is no such folder. */
export const listFolderRequest = new RequestType<{ readonly uri: string }, readonly string[], void>(
  'propsoff/listFolder',
);

/** Server to client: the craft scripts below a folder; of very many, so many. */
export const findScriptsRequest = new RequestType<
  { readonly uri: string; readonly most: number },
  FoundScripts,
  void
>('propsoff/findScripts');
