/** Installs the packer if it is not there yet. */
export function ensurePacker(): Promise<void>;

/** Packs what is in `dist/` and beside it to a path. */
export function makePackage(path: string): Promise<void>;
