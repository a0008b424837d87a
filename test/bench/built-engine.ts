import { createRequire } from 'node:module';
import { join } from 'node:path';
import { type BuildOptions, build } from 'esbuild';

export type Engine = typeof import('./engine');

/** How a server is bundled, ours and those that it is measured against. */
export const asServersShip: BuildOptions = {
  bundle: true,
  minify: true,
  platform: 'node',
  format: 'cjs',
  target: 'node20',
  mainFields: ['module', 'main'],
  logLevel: 'warning',
};

/** Bundles the engine as the server is bundled, and loads it: what runs TypeScript in tests makes it slower. */
export async function builtEngine(root: string): Promise<Engine> {
  const outfile = join(root, 'dist/bench/engine.js');
  await build({ ...asServersShip, entryPoints: [join(root, 'test/bench/engine.ts')], outfile });
  return createRequire(outfile)(outfile) as Engine;
}
