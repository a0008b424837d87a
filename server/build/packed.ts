import { brotliCompressSync, constants } from 'node:zlib';

/** A text in so few characters that a bundle stays small; `unpacked` reads it. */
export function packed(text: string): string {
  const params = { [constants.BROTLI_PARAM_LGWIN]: constants.BROTLI_MAX_WINDOW_BITS };
  return brotliCompressSync(text, { params }).toString('base64');
}
