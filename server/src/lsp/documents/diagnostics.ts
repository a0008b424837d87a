import type { Connection, DocumentDiagnosticReport, ServerCapabilities } from 'vscode-languageserver';
import type { OnFault } from '../../checks/checker';
import type { ClientAbilities } from '../client-abilities';
import { diagnosticsFor } from '../convert/to-diagnostic';
import { DocumentDiagnosticReportKind } from '../library';
import type { Session } from '../session';
import { nextTurn } from './turn';

/** To be asked for findings is offered only to a client that says it can; the others are sent them. */
export function diagnosticCapability({ asksForFindings }: ClientAbilities): ServerCapabilities | null {
  if (!asksForFindings) return null;
  return {
    diagnosticProvider: {
      identifier: 'propsoff',
      interFileDependencies: true,
      workspaceDiagnostics: true,
      workDoneProgress: true,
    },
  };
}

/** An open document, as the client spells it. */
interface OpenDocument {
  readonly uri: string;
  readonly version: number;
}

/**
 * Gets findings to the client: sent (push), until it asks for them (pull). Many a client says that it can ask and
 * then only listens. Sending waits only until the messages that are already here have been dealt with, so that a
 * burst of edits is checked once and what was asked is answered first; there is no timer.
 */
export class Diagnostics {
  private readonly waiting = new Set<string>();
  /** Scripts that wait because of something else than an edit of theirs. */
  private readonly concerned = new Set<string>();
  private isScheduled = false;
  private isPulled = false;
  /** Scripts whose findings the client has been sent. */
  private readonly pushed = new Set<string>();
  /** Numbers for stamps, as result ids of pulled reports. */
  private readonly ids = new WeakMap<object, string>();
  private lastId = 0;

  constructor(
    private readonly connection: Connection,
    private readonly session: Session,
    private readonly onChecked: (uri: string) => void,
    private readonly onFault: OnFault,
  ) {}

  /** An open script has new text. */
  changed(uri: string): void {
    this.waiting.add(uri);
    // What a craft finds in the text of its board is shown there as well.
    for (const text of this.openTextsOf(uri)) this.concerned.add(text);
    this.schedule();
  }

  /** Scripts whose findings may have changed without an edit of theirs. */
  affected(uris: readonly string[]): void {
    for (const uri of uris) for (const one of [uri, ...this.openTextsOf(uri)]) this.concerned.add(one);
    this.schedule();
  }

  /** A closed script has no findings any more. */
  closed(uri: string): void {
    this.waiting.delete(uri);
    this.concerned.delete(uri);
    this.takeBack(uri);
  }

  /** An answer for a client that asks. What it was sent before is taken back: it would show each finding twice. */
  report(uri: string, previousId: string | undefined): DocumentDiagnosticReport {
    this.isPulled = true;
    for (const sent of this.pushed) this.takeBack(sent);
    const stamp = this.session.long.get(uri) ?? this.session.workspace.stamp(uri);
    if (stamp === undefined) return { kind: DocumentDiagnosticReportKind.Full, items: [] };
    const resultId = [stamp, ...this.stampsOfIncluders(uri)].map((one) => this.idOf(one)).join(' ');
    if (resultId === previousId) return { kind: DocumentDiagnosticReportKind.Unchanged, resultId };
    const items = diagnosticsFor(this.session, uri);
    return { kind: DocumentDiagnosticReportKind.Full, resultId, items };
  }

  private schedule(): void {
    this.session.traffic.noted();
    if (this.isScheduled) return;
    this.isScheduled = true;
    nextTurn(() => this.flushWhenQuiet());
  }

  private flushWhenQuiet(): void {
    if (this.session.traffic.isOver()) {
      this.isScheduled = false;
      this.flush();
    } else nextTurn(() => this.flushWhenQuiet());
  }

  private flush(): void {
    const edited = this.openOf(this.waiting);
    // What was published stays until all that a script includes has been read: each then comes here again.
    const concerned = this.openOf(this.concerned).filter((one) => !this.isPending(one));
    const others = concerned.filter((one) => !edited.includes(one));
    this.waiting.clear();
    this.concerned.clear();
    // Also for one that was edited: the client may have asked, and been answered, before something else concerned it.
    if (concerned.length > 0 && this.isPulled) this.refresh();
    for (const open of [...edited, ...others]) {
      if (!this.isPulled) this.push(open);
      this.onChecked(open.uri);
    }
  }

  private openOf(uris: ReadonlySet<string>): readonly OpenDocument[] {
    const { workspace, long } = this.session;
    return [...uris].flatMap((uri) => long.get(uri) ?? workspace.get(uri) ?? []);
  }

  /** What crafts find in a board's text is shown there too. */
  private stampsOfIncluders(uri: string): readonly object[] {
    const { workspace } = this.session;
    return workspace.includersOf(uri).flatMap((one) => workspace.stamp(one.uri) ?? []);
  }

  /** The open texts of boards that an open script includes. */
  private openTextsOf(uri: string): readonly string[] {
    const { workspace } = this.session;
    const open = workspace.get(uri);
    const text = open?.craft.boardText();
    const openText = text === undefined || text === open?.script ? undefined : workspace.get(text.uri);
    return openText === undefined ? [] : [openText.uri];
  }

  private isPending({ uri }: OpenDocument): boolean {
    return this.session.workspace.get(uri)?.craft.layers().isPending === true;
  }

  /** Asks a client that asks for findings to do so anew, for all that it shows. */
  private refresh(): void {
    if (!this.session.client.refreshesFindings) return;
    this.connection.languages.diagnostics
      .refresh()
      .catch((error: unknown) => this.onFault('asking the client to ask again', error));
  }

  /** Nothing awaits this, so a failure ends here: it must not take the server down. */
  private push({ uri, version }: OpenDocument): void {
    try {
      const diagnostics = diagnosticsFor(this.session, uri);
      this.pushed.add(uri);
      void this.connection.sendDiagnostics({ uri, version, diagnostics });
    } catch (error) {
      this.onFault('diagnostics', error);
    }
  }

  private takeBack(uri: string): void {
    if (this.pushed.delete(uri)) void this.connection.sendDiagnostics({ uri, diagnostics: [] });
  }

  private idOf(stamp: object): string {
    const known = this.ids.get(stamp);
    if (known !== undefined) return known;
    this.lastId += 1;
    const id = String(this.lastId);
    this.ids.set(stamp, id);
    return id;
  }
}
