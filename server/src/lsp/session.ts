import type {
  ClientCapabilities,
  Location as ClientLocation,
  Position as ClientPosition,
  Range as ClientRange,
} from 'vscode-languageserver';
import type { Craft } from '../craft/craft';
import type { Script } from '../craft/script';
import type { Location, Position, Range, TextEdit } from '../features/range';
import type { Snapshot } from '../features/snapshot';
import type { OpenScript, Workspace } from '../workspace/workspace';
import { type Encoding, fromClient, toClient } from './encoding';

/** One client's connection: its workspace, what it can do, and how it counts. */
export class Session {
  /** The pack that the pilot looks at, by script. */
  private readonly packs = new Map<string, string | null>();

  constructor(
    readonly workspace: Workspace,
    readonly client: ClientCapabilities,
    readonly encoding: Encoding,
  ) {}

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
    };
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
    return script.document.clamp(fromClient(script.document, position, this.encoding));
  }

  range(script: Script, range: ClientRange): Range {
    return { start: this.position(script, range.start), end: this.position(script, range.end) };
  }

  clientPosition(script: Script, position: Position): ClientPosition {
    return toClient(script.document, position, this.encoding);
  }

  clientRange(script: Script, { start, end }: Range): ClientRange {
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
    return this.workspace.all().map(({ craft }) => craft);
  }
}
