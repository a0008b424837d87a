import type { TextDocumentContentChangeEvent, TextDocumentItem } from 'vscode-languageserver';
import type { Script } from '../../craft/script';
import type { DocumentEdit } from '../../language/document';
import { canonicalUri } from '../../workspace/canonical-uri';
import type { Session } from '../session';
import { boardLanguage } from './board-documents';
import { isTooLong, type LongDocument } from './long-documents';

type TextChanges = readonly TextDocumentContentChangeEvent[];

/** What is known of an open text beside what the workspace has. */
interface KnownText {
  readonly languageId: string;
  /** Its length, or more: what an edit takes away is not counted. */
  mostLength: number;
}

/** Texts that the client has opened: scripts, and boards' texts. One that is too long is only reported as such. */
export class OpenTexts {
  private readonly known = new Map<string, KnownText>();

  constructor(private readonly session: Session) {}

  open({ uri, text, version, languageId }: TextDocumentItem): void {
    const { boards, workspace, long } = this.session;
    // What was open before under this name, in whichever language, is no more.
    boards.closed(uri);
    long.delete(uri);
    this.known.set(canonicalUri(uri), { languageId, mostLength: text.length });
    if (isTooLong(text.length)) this.letGo(uri, version, languageId, text.length);
    else if (languageId === boardLanguage) boards.opened(uri, text, version);
    else workspace.openScript(uri, text, version);
  }

  /** False when nothing of this name is open. */
  change(uri: string, version: number, changes: TextChanges): boolean {
    const { boards, workspace, long } = this.session;
    const before = long.get(uri);
    if (before !== undefined) return this.changeLong({ ...before, version }, changes);
    const open = workspace.get(uri);
    if (open === undefined) return false;
    if (!boards.changed(uri, changes, version))
      workspace.change(uri, editsFrom(this.session, open.script, changes), version);
    this.measure(uri, version, changes);
    return true;
  }

  /** What was open, as the client spells it; null when nothing was. */
  close(uri: string): string | null {
    const { boards, workspace, long } = this.session;
    const spelled = long.get(uri)?.uri ?? null;
    this.known.delete(canonicalUri(uri));
    long.delete(uri);
    boards.closed(uri);
    return workspace.close(uri)?.uri ?? spelled;
  }

  /** The edits of a text that was let go can't be followed; a whole text that the client sends can be. */
  private changeLong(document: LongDocument, changes: TextChanges): boolean {
    const at = changes.findLastIndex((change) => !('range' in change));
    const whole = changes[at];
    if (whole === undefined) {
      this.session.long.put(document);
      return true;
    }
    this.open({ ...document, text: whole.text });
    const rest = changes.slice(at + 1);
    return rest.length === 0 || this.change(document.uri, document.version, rest);
  }

  /** Counts what came in, and looks closer only where that may be too much. */
  private measure(uri: string, version: number, changes: TextChanges): void {
    const known = this.known.get(canonicalUri(uri));
    if (known === undefined) return;
    for (const { text } of changes) known.mostLength += text.length;
    if (!isTooLong(known.mostLength)) return;
    const { boards, workspace } = this.session;
    const length = boards.lengthOf(uri) ?? workspace.get(uri)?.script.document.text().length ?? 0;
    known.mostLength = length;
    if (isTooLong(length)) this.letGo(uri, version, known.languageId, length);
  }

  private letGo(uri: string, version: number, languageId: string, length: number): void {
    const { boards, workspace, long } = this.session;
    boards.closed(uri);
    workspace.close(uri);
    long.put({ uri, languageId, version, length });
  }
}

/** Edits in their order, each counted against the text that those before it have made. */
function* editsFrom(
  session: Session,
  script: Script,
  changes: readonly TextDocumentContentChangeEvent[],
): Iterable<DocumentEdit> {
  for (const change of changes) {
    if ('range' in change) {
      yield { ...session.range(script, change.range), text: change.text };
    } else {
      yield {
        start: { line: 0, character: 0 },
        end: { line: script.document.lineCount, character: 0 },
        text: change.text,
      };
    }
  }
}
