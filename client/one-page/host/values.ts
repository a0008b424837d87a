import { URI, Utils } from 'vscode-uri';

/** What the editor's interface has as values, as far as our client uses it. */

export const Uri = Object.assign(URI, { joinPath: Utils.joinPath });

export class Position {
  constructor(
    readonly line: number,
    readonly character: number,
  ) {}

  isEqual(other: Position): boolean {
    return this.line === other.line && this.character === other.character;
  }
}

export class Range {
  readonly start: Position;
  readonly end: Position;

  constructor(start: Position, end: Position);
  constructor(startLine: number, startCharacter: number, endLine: number, endCharacter: number);
  constructor(one: Position | number, other: Position | number, endLine = 0, endCharacter = 0) {
    this.start = typeof one === 'number' ? new Position(one, other as number) : one;
    this.end = typeof other === 'number' ? new Position(endLine, endCharacter) : other;
  }

  get isEmpty(): boolean {
    return this.start.isEqual(this.end);
  }
}

export class Selection extends Range {
  get active(): Position {
    return this.end;
  }
}

export class Disposable {
  constructor(readonly dispose: () => void) {}

  static from(...all: readonly { dispose(): unknown }[]): Disposable {
    return new Disposable(() => {
      for (const one of all) one.dispose();
    });
  }
}

export type Listener<T> = (event: T) => unknown;

export class EventEmitter<T> {
  private readonly listeners = new Set<Listener<T>>();

  readonly event = (listener: Listener<T>): Disposable => {
    this.listeners.add(listener);
    return new Disposable(() => this.listeners.delete(listener));
  };

  fire(event: T): void {
    for (const listener of [...this.listeners]) listener(event);
  }

  dispose(): void {
    this.listeners.clear();
  }
}

export class CancellationTokenSource {
  private readonly emitter = new EventEmitter<void>();
  private isCancelled = false;
  readonly token: { readonly isCancellationRequested: boolean; onCancellationRequested: unknown };

  constructor() {
    const isCancelled = () => this.isCancelled;
    this.token = {
      get isCancellationRequested() {
        return isCancelled();
      },
      onCancellationRequested: this.emitter.event,
    };
  }

  cancel(): void {
    if (this.isCancelled) return;
    this.isCancelled = true;
    this.emitter.fire();
  }

  dispose(): void {
    this.emitter.dispose();
  }
}

export class FileSystemError extends Error {
  constructor(
    message: string,
    readonly code: string,
  ) {
    super(message);
  }
}

export interface TextReplaced {
  readonly range: Range;
  readonly newText: string;
}

export class WorkspaceEdit {
  readonly byUri = new Map<string, TextReplaced[]>();

  replace(uri: URI, range: Range, newText: string): void {
    const key = uri.toString();
    this.byUri.set(key, [...(this.byUri.get(key) ?? []), { range, newText }]);
  }

  insert(uri: URI, at: Position, newText: string): void {
    this.replace(uri, new Range(at, at), newText);
  }
}

export class RelativePattern {
  constructor(
    readonly base: URI,
    readonly pattern: string,
  ) {}
}

export class ThemeColor {
  constructor(readonly id: string) {}
}

export class CodeAction {
  diagnostics: unknown;
  command: { readonly command: string; readonly title: string; readonly arguments?: unknown[] } | undefined;

  constructor(
    readonly title: string,
    readonly kind: string,
  ) {}
}

export class Diagnostic {
  source: string | undefined;
  code: string | number | undefined;

  constructor(
    readonly range: Range,
    readonly message: string,
    readonly severity: number,
  ) {}
}

/** A page in a tab of its own. */
export class TabInputWebview {
  constructor(readonly viewType: string) {}
}

export const CodeActionKind = { QuickFix: 'quickfix' };
export const CodeActionTriggerKind = { Invoke: 1, Automatic: 2 };
export const DiagnosticSeverity = { Error: 0, Warning: 1, Information: 2, Hint: 3 };
export const FileType = { Unknown: 0, File: 1, Directory: 2, SymbolicLink: 64 };
export const ProgressLocation = { SourceControl: 1, Window: 10, Notification: 15 };
export const QuickPickItemKind = { Separator: -1, Default: 0 };
export const StatusBarAlignment = { Left: 1, Right: 2 };
export const UIKind = { Desktop: 1, Web: 2 };
export const ViewColumn = { Active: -1, Beside: -2, One: 1 };
