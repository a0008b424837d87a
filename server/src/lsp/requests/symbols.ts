import type {
  CancellationToken,
  Range as ClientRange,
  DocumentSymbol as ClientSymbol,
  SymbolInformation,
  WorkspaceSymbolParams,
} from 'vscode-languageserver';
import { boardAnswers } from '../../features/board/answers';
import { type DocumentSymbol, documentSymbols } from '../../features/navigation/document-symbols';
import { scriptsOf } from '../../features/navigation/named-at';
import { type WorkspaceSymbol, workspaceSymbols } from '../../features/navigation/workspace-symbols';
import type { Range } from '../../features/range';
import { SymbolKind } from '../library';
import type { Session } from '../session';
import type { BoardContext, ScriptContext } from './about-script';
import type { Services } from './row';

const kinds: Readonly<Record<DocumentSymbol['kind'] | WorkspaceSymbol['kind'], SymbolKind>> = {
  craft: SymbolKind.Class,
  section: SymbolKind.Namespace,
  pack: SymbolKind.Object,
  switch: SymbolKind.Event,
  setting: SymbolKind.Property,
  constant: SymbolKind.Constant,
  include: SymbolKind.File,
  more: SymbolKind.Null,
};

export function scriptSymbols({ session, snapshot }: ScriptContext) {
  const range = (one: Range) => session.clientRange(snapshot.script, one);
  return clientSymbols(session, documentSymbols(snapshot), snapshot.uri, range);
}

export function boardSymbols({ session, snapshot, board, layer }: BoardContext) {
  const range = (one: Range) => session.clientBoardRange(board, one);
  return clientSymbols(session, boardAnswers().boardOutline(layer), snapshot.uri, range);
}

/** A range as the client counts. */
type Ranging = (range: Range) => ClientRange;

function clientSymbols(
  { client }: Session,
  symbols: readonly DocumentSymbol[],
  uri: string,
  range: Ranging,
): ClientSymbol[] | SymbolInformation[] {
  return client.symbolTree
    ? symbols.map((one) => branch(range, one))
    : symbols.flatMap((one) => flat(uri, range, one));
}

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

/** Looks through all scripts of the workspace, and what they include. */
export async function symbolsEverywhere(
  { session, wholeWorkspace }: Services,
  { query, workDoneToken }: WorkspaceSymbolParams,
  token: CancellationToken,
): Promise<SymbolInformation[]> {
  const crafts = await wholeWorkspace.crafts({ about: null, workDoneToken, isAwaited: false }, token);
  return workspaceSymbols(scriptsOf(crafts), query).map(({ name, kind, container, location }) => ({
    name,
    kind: kinds[kind],
    containerName: container,
    location: session.clientLocation(location),
  }));
}
