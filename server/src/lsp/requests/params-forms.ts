import { count, type Form, flag, leftOutOr, list, object, optional, text } from './form';

const document = object({ uri: text });
const position = object({ line: count, character: count });
const range = object({ start: position, end: position });
const about = { textDocument: document };
const here = { ...about, position };
const stretch = { ...about, range };
const setting = { ...about, path: text, pack: optional(text) };
const answer = { setting: text, typed: text };
const side = object({ uri: text, text: optional(text), name: text, pack: optional(text) });
const capture = { capture: text, board: optional(text) };
const files = list(object({ uri: text }));
const folders = list(object({ uri: text }));

/** What the parameters of a message must hold for its handler: of those that it reads, the form of each. */
const forms: ReadonlyMap<string, Form> = new Map([
  ['initialize', object({ capabilities: object({}) })],
  ['textDocument/didOpen', object({ textDocument: object({ uri: text, text }) })],
  [
    'textDocument/didChange',
    object({ ...about, contentChanges: list(object({ text, range: leftOutOr(range) })) }),
  ],
  ['textDocument/didClose', object(about)],
  ['workspace/didChangeWatchedFiles', object({ changes: files })],
  ['workspace/didDeleteFiles', object({ files })],
  ['workspace/didRenameFiles', object({ files: list(object({ oldUri: text, newUri: text })) })],
  ['workspace/didChangeWorkspaceFolders', object({ event: object({ added: folders, removed: folders }) })],
  ['$/setTrace', object({ value: text })],
  ['$/progress', object({})],

  ['textDocument/hover', object(here)],
  ['textDocument/completion', object(here)],
  ['completionItem/resolve', object({})],
  ['textDocument/definition', object(here)],
  ['textDocument/references', object({ ...here, context: object({ includeDeclaration: flag }) })],
  ['textDocument/documentHighlight', object(here)],
  ['textDocument/prepareRename', object(here)],
  ['textDocument/rename', object({ ...here, newName: text })],
  ['textDocument/documentSymbol', object(about)],
  ['textDocument/documentLink', object(about)],
  ['textDocument/foldingRange', object(about)],
  ['textDocument/selectionRange', object({ ...about, positions: list(position) })],
  ['textDocument/codeLens', object(about)],
  ['textDocument/codeAction', object({ ...stretch, context: object({ only: optional(list(text)) }) })],
  ['textDocument/formatting', object(about)],
  ['textDocument/rangeFormatting', object(stretch)],
  ['textDocument/inlayHint', object(stretch)],
  ['textDocument/semanticTokens/full', object(about)],
  ['textDocument/semanticTokens/range', object(stretch)],
  ['textDocument/diagnostic', object(about)],
  ['workspace/symbol', object({ query: text })],

  ['propsoff/summary', object(about)],
  ['propsoff/setHere', object(here)],
  ['propsoff/explain', object(here)],
  ['propsoff/sheet', object(about)],
  ['propsoff/tryable', object(setting)],
  ['propsoff/try', object({ ...setting, to: text })],
  ['propsoff/compare', object({ before: side, after: side })],
  ['propsoff/hoverElsewhere', object({ uri: text, text, position })],
  ['propsoff/flightForm', object({ ...about, record: optional(text), today: text })],
  ['propsoff/flightAnswer', object({ ...about, ...answer })],
  [
    'propsoff/noteFlight',
    object({ ...about, name: text, pack: optional(text), answers: list(object(answer)) }),
  ],
  ['propsoff/benchCard', object(about)],
  [
    'propsoff/keepReadings',
    object({ ...about, readings: list(object({ id: text, value: text })), today: text }),
  ],
  [
    'propsoff/boardText',
    object({
      ...about,
      board: optional(text),
      since: optional(text),
      reason: optional(text),
      isPreview: flag,
    }),
  ],
  ['propsoff/prove', object({ ...about, ...capture })],
  ['propsoff/read', object(capture)],
  ['propsoff/learn', object({ capture: text })],
  ['propsoff/makeProfile', object({ capture: text, name: text, confirmed: list(list(text)) })],
  ['propsoff/packInView', object({ uri: text, pack: optional(text) })],
  ['propsoff/boardOf', object({ uri: text, board: text })],
]);

/** What is wrong with the parameters of a message, as the end of a sentence; null where nothing is. */
export function paramsFault(method: string, params: unknown): string | null {
  return forms.get(method)?.(params, 'params') ?? null;
}
