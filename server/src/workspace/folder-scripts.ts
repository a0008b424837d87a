import { canonicalUri } from './canonical-uri';
import type { FileSystem, FoundScripts } from './file-system';

/** Which craft scripts lie below folders: looked for when somebody asks, until something changes on the disk. */
export class FolderScripts {
  private readonly found = new Map<string, Promise<FoundScripts>>();

  constructor(private readonly fileSystem: FileSystem) {}

  below(folder: string): Promise<FoundScripts> {
    const known = this.found.get(folder) ?? this.look(folder);
    this.found.set(folder, known);
    return known;
  }

  /** A file or a folder came or went. */
  forget(): void {
    this.found.clear();
  }

  private async look(folder: string): Promise<FoundScripts> {
    const found = await this.fileSystem.scriptsBelow(folder);
    return { ...found, scripts: found.scripts.map(canonicalUri) };
  }
}
