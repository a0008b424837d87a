import {
  type Range as ClientRange,
  type DocumentSymbol as ClientSymbol,
  type ServerCapabilities,
  type SymbolInformation,
  SymbolKind,
} from 'vscode-languageserver';
import { boardOutline } from '../../features/board/outline';
import { type DocumentSymbol, documentSymbols } from '../../features/navigation/document-symbols';
import type { Range } from '../../features/range';
import type { Registration } from './features';
import { answering } from './request';

export const documentSymbolCapability: ServerCapabilities = { documentSymbolProvider: true };

const kinds: Readonly<Record<DocumentSymbol['kind'], SymbolKind>> = {
  section: SymbolKind.Namespace,
  pack: SymbolKind.Object,
  switch: SymbolKind.Event,
  setting: SymbolKind.Property,
  constant: SymbolKind.Constant,
  include: SymbolKind.File,
  more: SymbolKind.Null,
};

export function registerDocumentSymbols({ connection, session, onFault }: Registration): void {
  const isTree = session.client.textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true;
  const shown = (symbols: readonly DocumentSymbol[], uri: string, range: Ranging) =>
    isTree ? symbols.map((one) => branch(range, one)) : symbols.flatMap((one) => flat(uri, range, one));
  connection.onDocumentSymbol(
    answering(
      session,
      onFault,
      'outline',
      ({ snapshot }) => {
        const range = (one: Range) => session.clientRange(snapshot.script, one);
        return shown(documentSymbols(snapshot), snapshot.uri, range);
      },
      ({ snapshot, board, translation }) =>
        shown(boardOutline(translation), snapshot.uri, (one) => session.clientBoardRange(board, one)),
    ),
  );
}

/** A range as the client counts. */
type Ranging = (range: Range) => ClientRange;

function branch(clientRange: Ranging, symbol: DocumentSymbol): ClientSymbol {
  const { name, detail, kind, range, selection, children } = symbol;
  return {
    name,
    detail,
    kind: kinds[kind],
    range: clientRange(range),
    selectionRange: clientRange(selection),
    children: children.map((child) => branch(clientRange, child)),
  };
}

/** For clients that know no tree: every entry with the name of the one that it stands in. */
function flat(
  uri: string,
  clientRange: Ranging,
  { name, kind, range, children }: DocumentSymbol,
  containerName?: string,
): SymbolInformation[] {
  const own = {
    name,
    kind: kinds[kind],
    location: { uri, range: clientRange(range) },
    ...(containerName === undefined ? {} : { containerName }),
  };
  return [own, ...children.flatMap((child) => flat(uri, clientRange, child, name))];
}
