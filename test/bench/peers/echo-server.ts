// The floor for a server in Node with the protocol library: it holds the text and sends what it was given to send.
import {
  createConnection,
  type InitializeParams,
  ProposedFeatures,
  TextDocumentSyncKind,
  TextDocuments,
} from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Canned } from './canned';

const connection = createConnection(ProposedFeatures.all);
const documents = new TextDocuments(TextDocument);
let canned: Canned = { diagnostics: [], hover: null, completion: null };

connection.onInitialize(({ initializationOptions }: InitializeParams) => {
  canned = initializationOptions as Canned;
  return {
    capabilities: {
      textDocumentSync: TextDocumentSyncKind.Incremental,
      hoverProvider: true,
      completionProvider: {},
    },
  };
});
documents.onDidChangeContent(({ document: { uri, version } }) => {
  void connection.sendDiagnostics({ uri, version, diagnostics: [...canned.diagnostics] });
});
connection.onHover(() => canned.hover);
connection.onCompletion(() => canned.completion);
documents.listen(connection);
connection.listen();
