import type { CodeLens, ServerCapabilities } from 'vscode-languageserver';
import { codeLenses } from '../../features/code-lenses';
import type { Registration } from '../features';
import { answering } from '../request';

export const codeLensCapability: ServerCapabilities = { codeLensProvider: {} };

/** Their commands are those of our own client; another one shows the figures and does nothing on a click. */
export function registerCodeLenses({ connection, session, onFault }: Registration): void {
  connection.onCodeLens(
    answering(session, onFault, 'code lenses', ({ snapshot }) =>
      codeLenses(snapshot).flatMap(({ range, figures, tryable, pack }): readonly CodeLens[] => {
        const at = session.clientRange(snapshot.script, range);
        const uri = snapshot.uri;
        const trying = {
          title: 'Try a value',
          command: 'propsoff.tryValue',
          arguments: [uri, tryable, pack],
        };
        const shown = { title: figures ?? '', command: 'propsoff.showBuildSheet' };
        return [...(figures === null ? [] : [{ range: at, command: shown }]), { range: at, command: trying }];
      }),
    ),
  );
}
