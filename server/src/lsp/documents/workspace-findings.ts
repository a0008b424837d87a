import type {
  CancellationToken,
  Connection,
  Diagnostic,
  ProgressToken,
  WorkspaceDiagnosticParams,
  WorkspaceDiagnosticReport,
  WorkspaceDocumentDiagnosticReport,
} from 'vscode-languageserver';
import { inputKeys } from '../../craft/keys';
import { canonicalUri } from '../../workspace/canonical-uri';
import type { Pace, Survey, Touch } from '../../workspace/closed-scripts';
import type { Unread } from '../../workspace/file-system';
import { stopIfCancelled } from '../cancelled';
import { diagnosticsFrom } from '../convert/to-diagnostic';
import { DiagnosticSeverity, DocumentDiagnosticReportKind, WorkspaceDiagnosticRequest } from '../library';
import type { Session } from '../session';
import type { Diagnostics } from './diagnostics';
import type { WholeWorkspace } from './whole-workspace';

/** What was last found in a script that nobody has opened. */
interface ScriptFindings {
  readonly items: Diagnostic[];
  /** Changes with the items only. */
  readonly id: string;
  /** What it was found in: the script itself, and all that it includes or looks for. */
  readonly files: ReadonlySet<string>;
  /** Whether it hung on who includes the script. */
  readonly asksIncluders: boolean;
  isStale: boolean;
}

/** A client that waits for news: what it knows of each script, and how to wake it. */
interface WaitingClient {
  /** Result ids by canonical URI. */
  readonly known: Map<string, string>;
  /** Texts that were closed: it may show findings of them, whatever it knows. */
  readonly left: Set<string>;
  wake(): void;
}

/** So many reports go out together, where the client takes parts. */
const inOnePart = 8;

/** What goes to the client: in parts where it takes them, else at the end. */
class Reports {
  readonly kept: WorkspaceDocumentDiagnosticReport[] = [];
  count = 0;

  constructor(
    private readonly connection: Connection,
    private readonly token: ProgressToken | undefined,
  ) {}

  add(items: readonly WorkspaceDocumentDiagnosticReport[]): void {
    this.count += items.length;
    if (items.length === 0) return;
    if (this.token === undefined) this.kept.push(...items);
    else
      void this.connection.sendProgress(WorkspaceDiagnosticRequest.partialResult, this.token, {
        items: [...items],
      });
  }
}

/**
 * Findings of all scripts of the workspace for a client that asks for them (`workspace/diagnostic`). A script is
 * checked again only when something that its craft reads has changed. A client that knows all there is to know has its
 * answer once there is something new: nobody asks every other second in vain. One client waits at a time.
 */
export class WorkspaceFindings {
  private readonly found = new Map<string, ScriptFindings>();
  private lastId = 0;
  /** Counts what has changed. */
  private changes = 0;
  private waiting: WaitingClient | null = null;
  /** Texts that were closed since the client asked last. */
  private readonly left = new Set<string>();

  constructor(
    private readonly connection: Connection,
    private readonly session: Session,
    private readonly diagnostics: Diagnostics,
    private readonly wholeWorkspace: WholeWorkspace,
  ) {
    session.workspace.closed.onTouched = (touch) => this.touched(touch);
  }

  /** An answer with what the client does not know yet. */
  async report(
    { previousResultIds, workDoneToken, partialResultToken }: WorkspaceDiagnosticParams,
    token: CancellationToken,
  ): Promise<WorkspaceDiagnosticReport> {
    const before = this.waiting;
    const known = new Map(previousResultIds.map(({ uri, value }) => [canonicalUri(uri), value]));
    const left = new Set(this.left);
    this.left.clear();
    for (const uri of left) known.delete(uri);
    const mine: WaitingClient = { known, left, wake: () => {} };
    this.waiting = mine;
    before?.wake();
    const reports = new Reports(this.connection, partialResultToken);
    const looking = { about: null, workDoneToken, isAwaited: false, title: 'Checking scripts' };
    try {
      while (reports.count === 0 && this.waiting === mine) {
        stopIfCancelled(token);
        const { changes } = this;
        await this.wholeWorkspace.during(looking, token, (survey, pace) =>
          this.reportNew(survey, mine, pace, reports),
        );
        const isWaiting = this.waiting === mine && changes === this.changes;
        if (reports.count === 0 && isWaiting) await this.news(mine, token);
      }
      return { items: reports.kept };
    } finally {
      if (this.waiting === mine) this.waiting = null;
    }
  }

  /** What was found in a script that is not open; its last report counts till there is another one. */
  last(uri: string): { readonly items: Diagnostic[]; readonly resultId?: string } {
    const found = this.found.get(canonicalUri(uri));
    return found === undefined ? { items: [] } : { items: found.items, resultId: found.id };
  }

  /** What was known of a script that was open counts no more: the client showed what was found while it was edited. */
  closed(uri: string): void {
    const key = canonicalUri(uri);
    // A client that closes a text asks for it once more, and heeds nothing else about it until that is answered: it is
    // reported to one that waits, and again when it asks anew.
    this.left.add(key);
    this.waiting?.left.add(key);
    this.waiting?.known.delete(key);
    this.changed();
  }

  private touched(touch: Touch): void {
    for (const found of this.found.values()) if (concerns(touch, found)) found.isStale = true;
    this.changed();
  }

  private changed(): void {
    this.changes += 1;
    this.waiting?.wake();
  }

  private news(waiting: WaitingClient, token: CancellationToken): Promise<void> {
    return new Promise((resolve) => {
      waiting.wake = resolve;
      token.onCancellationRequested(() => resolve());
    });
  }

  private async reportNew(
    survey: Survey,
    { known, left }: WaitingClient,
    pace: Pace,
    reports: Reports,
  ): Promise<void> {
    const { workspace } = this.session;
    reports.add(this.ofOpen(known));
    reports.add(survey.unread.flatMap((one) => this.ofUnread(one, known)));
    await this.check(survey.closed, pace, (uris) =>
      reports.add(uris.flatMap((uri) => this.ofClosed(uri, known))),
    );
    const there = new Set([...survey.closed, ...survey.unread.map(({ uri }) => uri)]);
    for (const uri of [...this.found.keys()]) if (!there.has(uri)) this.found.delete(uri);
    const isGone = (uri: string) => !there.has(uri) && workspace.get(uri) === undefined;
    const gone = [...new Set([...known.keys(), ...left])].filter(isGone);
    reports.add(gone.map((uri) => full({ uri, items: [], version: null })));
    for (const uri of gone) known.delete(uri);
    left.clear();
  }

  /** Checks what is stale or new, and tells of all as they are done. */
  private async check(
    closed: readonly string[],
    pace: Pace,
    done: (uris: readonly string[]) => void,
  ): Promise<void> {
    const isFresh = (uri: string) => this.found.get(uri)?.isStale === false;
    done(closed.filter(isFresh));
    const stale = closed.filter((uri) => !isFresh(uri));
    await this.wholeWorkspace.boardsOf(stale, pace);
    for (let from = 0; from < stale.length; from += inOnePart) {
      const some = stale.slice(from, from + inOnePart);
      for (const [index, uri] of some.entries()) {
        await pace({ done: from + index, of: stale.length });
        await this.checkOne(uri);
      }
      done(some);
    }
  }

  private async checkOne(uri: string): Promise<void> {
    const { workspace } = this.session;
    const craft = await workspace.closed.settledCraft(uri);
    if (craft === null) {
      this.found.delete(uri);
      return;
    }
    const items = diagnosticsFrom(this.session, workspace.check(craft));
    const before = this.found.get(uri);
    const isSame = before !== undefined && JSON.stringify(before.items) === JSON.stringify(items);
    this.found.set(uri, {
      items,
      id: isSame ? before.id : this.newId(),
      files: new Set([uri, ...craft.layers().files]),
      asksIncluders: craft.changed([inputKeys.included]),
      isStale: false,
    });
  }

  /** Other than the ids of open scripts, which are numbers. */
  private newId(): string {
    this.lastId += 1;
    return `closed ${this.lastId}`;
  }

  private ofClosed(uri: string, known: Map<string, string>): readonly WorkspaceDocumentDiagnosticReport[] {
    const found = this.found.get(uri);
    if (found === undefined || known.get(uri) === found.id) return [];
    known.set(uri, found.id);
    return [full({ uri, items: found.items, version: null, resultId: found.id })];
  }

  /** As they are told to a client that asks for each: it need not ask, for one that shows in no tab. */
  private ofOpen(known: Map<string, string>): WorkspaceDocumentDiagnosticReport[] {
    return this.session.workspace.allOpen().flatMap(({ uri, version }) => {
      const key = canonicalUri(uri);
      const report = this.diagnostics.report(uri, known.get(key));
      if (report.kind === DocumentDiagnosticReportKind.Unchanged || report.resultId === undefined) return [];
      known.set(key, report.resultId);
      return [full({ uri, items: report.items, version, resultId: report.resultId })];
    });
  }

  /** That a script could not be read is told at its top. */
  private ofUnread({ uri, why }: Unread, known: Map<string, string>) {
    const resultId = `unread ${why}`;
    if (known.get(uri) === resultId) return [];
    known.set(uri, resultId);
    return [full({ uri, items: [unreadDiagnostic(why)], version: null, resultId })];
  }
}

type FullReport = Omit<Extract<WorkspaceDocumentDiagnosticReport, { kind: 'full' }>, 'kind'>;

function full(report: FullReport): WorkspaceDocumentDiagnosticReport {
  return { kind: DocumentDiagnosticReportKind.Full, ...report };
}

function concerns(touch: Touch, { files, asksIncluders }: ScriptFindings): boolean {
  switch (touch.kind) {
    case 'file':
      return files.has(touch.uri);
    case 'includers':
      return asksIncluders;
    case 'all':
      return true;
  }
}

function unreadDiagnostic(why: string): Diagnostic {
  return {
    range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } },
    severity: DiagnosticSeverity.Error,
    source: 'propsoff',
    message: `This could not be read, so nothing in it is checked: ${why}.`,
  };
}
