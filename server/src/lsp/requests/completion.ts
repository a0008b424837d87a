import type {
  CompletionItem as ClientItem,
  Range as ClientRange,
  CompletionList,
  CompletionParams,
} from 'vscode-languageserver';
import { boardAnswers } from '../../features/board/answers';
import { completion } from '../../features/completion/completion';
import { completionDetails } from '../../features/completion/details';
import {
  type CompletionItem,
  type ItemKind,
  type ItemSubject,
  sortKeys,
} from '../../features/completion/item';
import type { Range } from '../../features/range';
import { markup } from '../convert/markup';
import { CompletionItemKind, InsertTextFormat } from '../library';
import type { BoardContext, ScriptContext } from './about-script';
import type { Services } from './row';

const kinds: Readonly<Record<ItemKind, CompletionItemKind>> = {
  parameter: CompletionItemKind.Property,
  section: CompletionItemKind.Module,
  part: CompletionItemKind.Snippet,
  word: CompletionItemKind.EnumMember,
  unit: CompletionItemKind.Unit,
  constant: CompletionItemKind.Constant,
  value: CompletionItemKind.Value,
  keyword: CompletionItemKind.Keyword,
  file: CompletionItemKind.File,
  acceptance: CompletionItemKind.Event,
};

export function scriptCompletion(
  { session, snapshot }: ScriptContext,
  { position, context }: CompletionParams,
): CompletionList {
  const options = { snippets: session.client.itemSnippets, trigger: context?.triggerCharacter ?? null };
  session.lookAround(snapshot.script);
  const at = session.position(snapshot.script, position);
  const { items, isIncomplete } = completion(snapshot, at, options);
  return {
    isIncomplete,
    items: clientItems(items, session.client.itemLabelDetails, (range) =>
      session.clientRange(snapshot.script, range),
    ),
  };
}

export function boardTextCompletion(
  { session, snapshot, board, layer }: BoardContext,
  { position }: CompletionParams,
): CompletionList {
  const items = boardAnswers().boardCompletion(
    layer,
    snapshot.catalog,
    session.boardPosition(board, position),
  );
  return {
    isIncomplete: false,
    items: clientItems(items, session.client.itemLabelDetails, (range) =>
      session.clientBoardRange(board, range),
    ).map((item) => ({
      ...item,
      data: { ...item.data, text: snapshot.uri },
    })),
  };
}

/** Everything that a description needs travels in the item: nothing is remembered between the requests. */
export function resolvedItem({ session }: Services, item: ClientItem): ClientItem {
  const { catalog } = session.workspace;
  const subject = subjectOf(item.data);
  const plain = completionDetails(catalog, subject);
  const layer = session.boards.get(boardOf(item.data))?.layer;
  const details =
    plain === null || layer === undefined
      ? plain
      : boardAnswers().boardWords(layer, catalog).markdown(plain, pathOf(subject));
  return details === null ? item : { ...item, documentation: markup(details, session.client.itemMarkdown) };
}

function clientItems(
  items: readonly CompletionItem[],
  labelDetails: boolean,
  clientRange: (range: Range) => ClientRange,
): ClientItem[] {
  const sortKey = sortKeys(items.length);
  // Most items replace the same stretch.
  const ranges = new Map<Range, ClientRange>();
  return items.map((item, index) => {
    const range = ranges.get(item.range) ?? clientRange(item.range);
    ranges.set(item.range, range);
    return clientItem(item, sortKey(index), range, labelDetails);
  });
}

function clientItem(
  item: CompletionItem,
  sortText: string,
  range: ClientRange,
  labelDetails: boolean,
): ClientItem {
  const { label, kind, detail, isHint, filterText, isSnippet, subject, insertText } = item;
  return {
    label,
    kind: kinds[kind],
    ...(isHint && labelDetails ? { labelDetails: { description: detail } } : { detail }),
    filterText,
    sortText,
    insertTextFormat: isSnippet ? InsertTextFormat.Snippet : InsertTextFormat.PlainText,
    data: subject,
    // One range, whether the client would insert or replace: two values never stand side by side in a script, so what
    // an item is put in front of goes in either way.
    textEdit: { range, newText: insertText },
  };
}

/** The setting that an item is about. */
function pathOf(subject: ItemSubject): string | null {
  if (subject.kind === 'parameter') return subject.name;
  return subject.kind === 'choice' ? subject.parameter : null;
}

/** The board's text that an item was offered in; nothing for a script. */
function boardOf(data: unknown): string {
  const hasText = typeof data === 'object' && data !== null && 'text' in data;
  return hasText && typeof data.text === 'string' ? data.text : '';
}

/** What came back with an item; a client may send anything. */
function subjectOf(data: unknown): ItemSubject {
  const isSubject = typeof data === 'object' && data !== null && 'kind' in data;
  return isSubject ? (data as ItemSubject) : { kind: 'none' };
}
