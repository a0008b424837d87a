import { type CompletionItem, CompletionRequest, type Position } from 'vscode-languageserver-protocol/node';
import type { TestServer } from './server';

/** What the server offers at a place, in the order in which a client shows it. */
export async function offered(
  server: TestServer,
  uri: string,
  position: Position,
): Promise<readonly CompletionItem[]> {
  const result = await server.connection.sendRequest(CompletionRequest.type, {
    textDocument: { uri },
    position,
  });
  const items = Array.isArray(result) ? result : (result?.items ?? []);
  const key = ({ sortText, label }: CompletionItem) => sortText ?? label;
  return [...items].sort((one, other) => (key(one) < key(other) ? -1 : key(one) > key(other) ? 1 : 0));
}
