import { strToU8, unzipSync, zipSync } from 'fflate';

/** A bundle is a plain zip: each text under its path, in UTF-8. Any archiver opens it. */

/** Longer texts are no scripts: a zip may say that it holds far more than it has. */
const longest = 20_000_000;

export function bundleOf(texts: readonly (readonly [path: string, text: string])[]): Uint8Array {
  return zipSync(Object.fromEntries(texts.map(([path, text]) => [path, strToU8(text)])));
}

export interface Unpacked {
  readonly texts: readonly (readonly [path: string, text: string])[];
  /** What is no text in UTF-8, too long for one, or would lie elsewhere. */
  readonly others: readonly string[];
}

/** The texts of a bundle by their paths; null for what is none. */
export function textsIn(bytes: Uint8Array): Unpacked | null {
  const texts: [string, string][] = [];
  const others: string[] = [];
  try {
    const files = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        if (name.endsWith('/')) return false;
        const isWanted = isPlain(name) && originalSize <= longest;
        if (!isWanted) others.push(name);
        return isWanted;
      },
    });
    for (const [path, content] of Object.entries(files)) {
      const text = textOf(content);
      if (text === null) others.push(path);
      else texts.push([path, text]);
    }
    return { texts, others };
  } catch {
    return null;
  }
}

function textOf(content: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(content);
  } catch {
    return null;
  }
}

/** A path below the folder, as a bundle of ours has them. */
function isPlain(path: string): boolean {
  return !path.split('/').some((step) => step === '' || step === '.' || step === '..');
}
