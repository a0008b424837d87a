// Serves the page without an install as any static host would: the files of `dist/page`, and nothing else.
import { existsSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join } from 'node:path';
import { root } from './machine.mjs';

const types = new Map([
  ['.html', 'text/html; charset=utf-8'],
  ['.js', 'text/javascript; charset=utf-8'],
  ['.png', 'image/png'],
  ['.webmanifest', 'application/manifest+json'],
]);

/** Listens on the loopback alone; `port` 0 takes one that is free. */
export async function servePage(port = 0) {
  const server = createServer(({ url = '/' }, response) => {
    const [, name = ''] = /^\/([\w.-]*)(?:\?.*)?$/.exec(url) ?? [];
    const path = join(root, 'dist', 'page', name === '' ? 'propsoff.html' : name);
    const type = types.get(extname(path));
    if (type === undefined || !existsSync(path)) response.writeHead(404).end();
    else
      response.writeHead(200, { 'Content-Type': type, 'Cache-Control': 'no-cache' }).end(readFileSync(path));
  });
  await new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', resolve);
  });
  const { port: taken } = server.address();
  return {
    address: `http://127.0.0.1:${taken}/propsoff.html`,
    close: async () => {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}
