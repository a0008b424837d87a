import { LSPErrorCodes, ResponseError, type ServerCapabilities } from 'vscode-languageserver';
import { prepareRename, rename } from '../../features/navigation/rename';
import { workspaceEdit } from '../convert/workspace-edit';
import type { Session } from '../session';
import type { Registration } from './features';
import { answering } from './request';

export function renameCapability({ client }: Session): ServerCapabilities {
  const canAsk = client.textDocument?.rename?.prepareSupport === true;
  return { renameProvider: canAsk ? { prepareProvider: true } : true };
}

export function registerRename({ connection, session, onFault }: Registration): void {
  connection.onPrepareRename(
    answering(session, onFault, 'rename', ({ snapshot }, { position }) => {
      const answer = prepareRename(snapshot, session.position(snapshot.script, position));
      if ('refused' in answer) return refusal(answer.refused);
      return {
        range: session.clientRange(snapshot.script, answer.range),
        placeholder: answer.placeholder,
      };
    }),
  );
  connection.onRenameRequest(
    answering(session, onFault, 'rename', ({ snapshot }, { position, newName }) => {
      const at = session.position(snapshot.script, position);
      const answer = rename(snapshot, at, newName, session.openCrafts());
      return 'refused' in answer ? refusal(answer.refused) : workspaceEdit(session, answer.files);
    }),
  );
}

/** Clients show the sentence to the pilot. */
function refusal(sentence: string): ResponseError<void> {
  return new ResponseError(LSPErrorCodes.RequestFailed, sentence);
}
