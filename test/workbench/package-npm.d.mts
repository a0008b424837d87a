/** Packs the programs that are in `dist/` with npm, to a path. */
export function makeNpmPackage(path: string): Promise<void>;
