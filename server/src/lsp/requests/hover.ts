import type { Hover, HoverParams } from 'vscode-languageserver';
import { boardAnswers } from '../../features/board/answers';
import { explainCheck, explainLine } from '../../features/hover/explain';
import { hover } from '../../features/hover/hover';
import { markup } from '../convert/markup';
import { isTooLong } from '../documents/long-documents';
import type { AboutPlace } from '../own-message';
import type { PlaceElsewhere } from '../protocol';
import type { BoardContext, ScriptContext } from './about-script';
import type { Services } from './row';

export function hoverAt({ session, snapshot }: ScriptContext, { position }: HoverParams): Hover | null {
  const found = hover(snapshot, session.position(snapshot.script, position));
  if (found === null) return null;
  return {
    contents: markup(found.markdown, session.client.hoverMarkdown),
    range: session.clientRange(snapshot.script, found.range),
  };
}

export function boardHoverAt(
  { session, snapshot, board, layer }: BoardContext,
  { position }: HoverParams,
): Hover | null {
  const inScript = session.position(snapshot.script, position);
  const found = boardAnswers().boardHover(layer, snapshot, inScript, session.boardPosition(board, position));
  if (found === null) return null;
  return {
    contents: markup(found.markdown, session.client.hoverMarkdown),
    range: session.clientBoardRange(board, found.range),
  };
}

/** All about a line, as Markdown. */
export function explanationAt({ session, snapshot }: ScriptContext, { position }: AboutPlace): string | null {
  return explainLine(snapshot, session.position(snapshot.script, position));
}

/** The story of a check, as Markdown. */
export function checkExplained(
  { session: { workspace } }: Services,
  { check }: { readonly check: string },
): string | null {
  return explainCheck(workspace.catalog, check);
}

/** Tells about texts that are only shown. They stay strangers to the workspace: nothing refers to or renames them. */
export async function hoverElsewhere(
  { session: { workspace } }: Services,
  { uri, text, position }: PlaceElsewhere,
) {
  if (isTooLong(text.length)) return null;
  const craft = await workspace.detached(uri, text);
  const script = craft.root;
  const pack = craft.packs()[0] ?? null;
  const { catalog } = workspace;
  const snapshot = {
    uri,
    script,
    craft,
    catalog,
    pack,
    findings: () => workspace.check(craft),
    others: () => [],
    layer: (of: string) => workspace.layer(of),
  };
  return hover(snapshot, script.document.clamp(position));
}
