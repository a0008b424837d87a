import type { FilePieces, FoundScripts } from '../../workspace/file-system';
import type { ServerFiles } from './editor-files';

type DiskFiles = Omit<ServerFiles, 'asksClient' | 'setHandedOver'>;

/** Files of this machine are read here, all others by the editor. */
export class FilesByScheme implements ServerFiles {
  private roots: readonly string[] = [];

  constructor(
    private readonly disk: DiskFiles,
    private readonly editor: ServerFiles,
  ) {}

  get asksClient(): boolean {
    return this.roots.some((root) => !isOnDisk(root));
  }

  setRoots(roots: readonly string[]): void {
    this.roots = roots;
    this.disk.setRoots(roots.filter(isOnDisk));
    this.editor.setRoots(roots.filter((root) => !isOnDisk(root)));
  }

  setHandedOver(isHandedOver: boolean): void {
    this.editor.setHandedOver(isHandedOver);
  }

  async readText(uri: string): Promise<string | null> {
    return this.of(uri).readText(uri);
  }

  async readPieces(uri: string): Promise<FilePieces | null> {
    return this.of(uri).readPieces(uri);
  }

  async list(folder: string): Promise<readonly string[]> {
    return this.of(folder).list(folder);
  }

  folders(): readonly string[] {
    return [...this.disk.folders(), ...this.editor.folders()];
  }

  foldersOf(uri: string): readonly string[] {
    return this.of(uri).foldersOf(uri);
  }

  async scriptsBelow(folder: string): Promise<FoundScripts> {
    return this.of(folder).scriptsBelow(folder);
  }

  refusal(uri: string, fromUri: string): string | null {
    return this.of(fromUri).refusal(uri, fromUri);
  }

  private of(uri: string): DiskFiles {
    return isOnDisk(uri) ? this.disk : this.editor;
  }
}

function isOnDisk(uri: string): boolean {
  return uri.startsWith('file:');
}
