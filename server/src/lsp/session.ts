import type {
  Location as ClientLocation,
  Position as ClientPosition,
  Range as ClientRange,
} from 'vscode-languageserver';
import { placeInScript } from '../board/layer/places';
import type { Craft } from '../craft/craft';
import type { Script } from '../craft/script';
import { placeInText, rangeInText } from '../features/board/places';
import type { Location, Position, Range, TextEdit } from '../features/range';
import type { Snapshot } from '../features/snapshot';
import type { OpenScript } from '../workspace/open-scripts';
import { otherScripts } from '../workspace/other-scripts';
import type { Workspace } from '../workspace/workspace';
import type { ClientAbilities } from './client-abilities';
import { CheckStories } from './convert/check-stories';
import { type Encoding, fromClient, toClient } from './convert/encoding';
import { PublishedDiagnostics } from './convert/published-diagnostics';
import { type BoardDocument, BoardDocuments } from './documents/board-documents';
import { LongDocuments } from './documents/long-documents';
import { Traffic } from './documents/turn';

/** One client's connection: its workspace, what it can do, and how it counts. */
export class Session {
  /** The pack that the pilot looks at, by script. */
  private readonly packs = new Map<string, string | null>();

  /** Messages that are coming in. */
  readonly traffic = new Traffic();

  /** Findings of scripts that were sent. */
  readonly published = new PublishedDiagnostics();

  /** Documents that are open and too long to be read. */
  readonly long = new LongDocuments();

  /** Folders whose scripts have been read for what is proposed. */
  private readonly lookedAround = new Set<string>();

  /** Texts of boards among the open documents. */
  readonly boards: BoardDocuments;

  constructor(
    readonly workspace: Workspace,
    readonly client: ClientAbilities,
    readonly encoding: Encoding,
    readonly stories: CheckStories = new CheckStories(client, new Set(), () => null),
  ) {
    this.boards = new BoardDocuments(workspace, encoding);
  }

  /** Whether a text is open, though it may be too long to be read. */
  isOpen(uri: string): boolean {
    return this.workspace.get(uri) !== undefined || this.long.get(uri) !== undefined;
  }

  /** An open script as features see it; undefined when it is not open. */
  snapshot(uri: string): Snapshot | undefined {
    const open = this.workspace.get(uri);
    if (open === undefined) return undefined;
    return {
      uri: open.uri,
      script: open.script,
      craft: open.craft,
      catalog: this.workspace.catalog,
      pack: this.packInView(open),
      findings: () => this.workspace.findings(uri),
      others: () => otherScripts(this.workspace, open.craft),
      layer: (of) => this.workspace.layer(of),
    };
  }

  /**
   * Has the scripts that lie around one read, once: what is proposed next knows them. Nobody waits for it, and what
   * can't be read is told to whoever asks for it.
   */
  lookAround({ uri }: Script): void {
    const folder = uri.slice(0, uri.lastIndexOf('/'));
    if (this.lookedAround.has(folder)) return;
    this.lookedAround.add(folder);
    this.workspace.closed.survey(uri, async () => {}).catch(() => this.lookedAround.delete(folder));
  }

  /** The pack that was picked, as long as the craft has it; else its first one. */
  packInView(open: OpenScript): string | null {
    const packs = open.craft.packs();
    const picked = this.packs.get(open.script.uri);
    return picked !== undefined && picked !== null && packs.includes(picked) ? picked : (packs[0] ?? null);
  }

  pickPack(uri: string, pack: string | null): void {
    const open = this.workspace.get(uri);
    if (open !== undefined) this.packs.set(open.script.uri, pack);
  }

  /** A client's position, moved into the script. */
  position(script: Script, position: ClientPosition): Position {
    const board = this.boards.get(script.uri);
    if (board !== undefined)
      return script.document.clamp(placeInScript(board.layer, this.boardPosition(board, position)));
    return script.document.clamp(fromClient(script.document, position, this.encoding));
  }

  range(script: Script, range: ClientRange): Range {
    return { start: this.position(script, range.start), end: this.position(script, range.end) };
  }

  /** A client's position in a board's text, in UTF-16 units. */
  boardPosition(board: BoardDocument, position: ClientPosition): Position {
    return fromClient(board.lines, position, this.encoding);
  }

  /** A range in a board's text itself, as the client counts. */
  clientBoardRange(board: BoardDocument, { start, end }: Range): ClientRange {
    return {
      start: toClient(board.lines, start, this.encoding),
      end: toClient(board.lines, end, this.encoding),
    };
  }

  clientPosition(script: Script, position: Position): ClientPosition {
    const board = this.boards.get(script.uri);
    if (board !== undefined) return toClient(board.lines, placeInText(board.layer, position), this.encoding);
    return toClient(script.document, position, this.encoding);
  }

  clientRange(script: Script, { start, end }: Range): ClientRange {
    const board = this.boards.get(script.uri);
    if (board !== undefined) {
      return this.clientBoardRange(board, rangeInText(board.layer, { start, end }));
    }
    return { start: this.clientPosition(script, start), end: this.clientPosition(script, end) };
  }

  clientEdit(script: Script, { range, newText }: TextEdit): { range: ClientRange; newText: string } {
    return { range: this.clientRange(script, range), newText };
  }

  /** The URI of a script as the client spells it. */
  clientUri(uri: string): string {
    return this.workspace.get(uri)?.uri ?? uri;
  }

  /** A place in a script of the workspace as the client spells and counts it. */
  clientLocation({ uri, range }: Location): ClientLocation {
    const script = this.workspace.script(uri);
    return {
      uri: this.clientUri(uri),
      range: script === undefined ? range : this.clientRange(script, range),
    };
  }

  /** The crafts of all open scripts: an included script does not know who includes it. */
  openCrafts(): readonly Craft[] {
    return this.workspace.allOpen().map(({ craft }) => craft);
  }
}
