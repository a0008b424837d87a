import { existsSync } from 'node:fs';
import { join } from 'node:path';

/** The repository. */
const root = join(__dirname, '../..');

/** A file that `npm run build` makes; `PROPSOFF_DIST` names another folder to take it from. */
export function built(name: string): string {
  const path = join(process.env.PROPSOFF_DIST ?? join(root, 'dist'), name);
  if (!existsSync(path)) throw new Error(`${path} is not there: npm run build makes it`);
  return path;
}
