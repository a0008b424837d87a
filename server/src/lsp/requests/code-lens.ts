import type { CodeLens, ServerCapabilities } from 'vscode-languageserver';
import { codeLenses } from '../../features/code-lenses';
import { ownAbilities } from '../own-abilities';
import type { Registration } from './features';
import { answering } from './request';

export const codeLensCapability: ServerCapabilities = { codeLensProvider: {} };

/** Their commands are those of our own client; another one gets the figures alone, with nothing to click. */
export function registerCodeLenses({ connection, session, onFault }: Registration): void {
  const { commands } = ownAbilities(session.client);
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
        const shown = { title: figures ?? '', command: commands ? 'propsoff.showBuildSheet' : '' };
        return [
          ...(figures === null ? [] : [{ range: at, command: shown }]),
          ...(commands ? [{ range: at, command: trying }] : []),
        ];
      }),
    ),
  );
}
