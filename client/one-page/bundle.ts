import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';

/** A bundle is a plain zip: each text under its path, in UTF-8. Any archiver opens it. */

/** Longer texts are no scripts: a zip may say that it holds far more than it has. */
const longest = 20_000_000;

export function bundleOf(texts: readonly (readonly [path: string, text: string])[]): Uint8Array {
  return zipSync(Object.fromEntries(texts.map(([path, text]) => [path, strToU8(text)])));
}

/** The texts of a bundle by their paths; null for what is none. */
export function textsIn(bytes: Uint8Array): readonly (readonly [path: string, text: string])[] | null {
  try {
    const files = unzipSync(bytes, {
      filter: ({ name, originalSize }) => !name.endsWith('/') && isPlain(name) && originalSize <= longest,
    });
    return Object.entries(files).map(([path, text]) => [path, strFromU8(text)]);
  } catch {
    return null;
  }
}

/** A path below the folder, as a bundle of ours has them. */
function isPlain(path: string): boolean {
  return !path.split('/').some((step) => step === '' || step === '.' || step === '..');
}
