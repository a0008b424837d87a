/** Stands in for Node's `process` in the libraries that the tests bring along; the extension gets none. */
export const process = { env: {} };
