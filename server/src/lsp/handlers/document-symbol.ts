import {
  type DocumentSymbol as ClientSymbol,
  type ServerCapabilities,
  type SymbolInformation,
  SymbolKind,
} from 'vscode-languageserver';
import { type DocumentSymbol, documentSymbols } from '../../features/document-symbols';
import type { Registration } from '../features';
import type { Context } from '../request';
import { answering } from '../request';

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
  connection.onDocumentSymbol(
    answering(session, onFault, 'outline', (context) => {
      const symbols = documentSymbols(context.snapshot);
      return isTree
        ? symbols.map((one) => branch(context, one))
        : symbols.flatMap((one) => flat(context, one));
    }),
  );
}

function branch(context: Context, symbol: DocumentSymbol): ClientSymbol {
  const { session, snapshot } = context;
  const { name, detail, kind, range, selection, children } = symbol;
  return {
    name,
    detail,
    kind: kinds[kind],
    range: session.clientRange(snapshot.script, range),
    selectionRange: session.clientRange(snapshot.script, selection),
    children: children.map((child) => branch(context, child)),
  };
}

/** For clients that know no tree: every entry with the name of the one that it stands in. */
function flat(context: Context, symbol: DocumentSymbol, containerName?: string): SymbolInformation[] {
  const { session, snapshot } = context;
  const { name, kind, range, children } = symbol;
  const location = { uri: snapshot.uri, range: session.clientRange(snapshot.script, range) };
  const own = {
    name,
    kind: kinds[kind],
    location,
    ...(containerName === undefined ? {} : { containerName }),
  };
  return [own, ...children.flatMap((child) => flat(context, child, name))];
}
