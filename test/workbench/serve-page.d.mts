/** Serves `dist/page` on the loopback, on a port that is free unless one is given. */
export function servePage(port?: number): Promise<{ readonly address: string; close(): Promise<void> }>;
