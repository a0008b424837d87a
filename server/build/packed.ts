import { brotliCompressSync, constants } from 'node:zlib';

/** A text in as few bytes as can be; `unpacked` reads it. */
export function packed(text: string): Uint8Array {
  const params = {
    [constants.BROTLI_PARAM_LGWIN]: constants.BROTLI_MAX_WINDOW_BITS,
    [constants.BROTLI_PARAM_SIZE_HINT]: Buffer.byteLength(text),
  };
  return brotliCompressSync(text, { params });
}
