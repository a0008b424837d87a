import { readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { type BuildOptions, type BuildResult, build, type Plugin, transform } from 'esbuild';

/**
 * Bundles a program for Node so that what it imports later lies in files of its own beside it, named after the
 * program: they are read only when something asks for them. The bundler splits modules of the newer kind alone, so
 * its files are turned into the older kind afterwards, which Node starts faster. `start`: the module that is nearly
 * always loaded. `required`: the modules that must be there as soon as they are asked for, so that the source requires
 * them, by the names of their parts.
 */
export async function buildInParts(
  name: string,
  entryPoint: string,
  start: string,
  required: Readonly<Record<string, string>>,
  options: BuildOptions & { readonly absWorkingDir: string },
): Promise<BuildResult> {
  const parts = Object.entries(required).map(([part, path]) => [`${name}-${part}`, path] as const);
  const split = await build({
    ...options,
    entryPoints: { [name]: entryPoint, ...Object.fromEntries(parts) },
    plugins: [
      besideTheStart(
        new Map(parts.map(([part, path]) => [join(options.absWorkingDir, path), part])),
        join(options.absWorkingDir, start),
        options.absWorkingDir,
      ),
    ],
    format: 'esm',
    splitting: true,
    chunkNames: `${name}-[name]-[hash]`,
    write: false,
  });
  for (const { path, text } of split.outputFiles) {
    const supported = { 'dynamic-import': false };
    const { code } = await transform(text, {
      format: 'cjs',
      platform: 'node',
      minify: options.minify === true,
      sourcemap: options.sourcemap === 'inline' && 'inline',
      supported,
    });
    writeFileSync(path, code);
  }
  return split;
}

/**
 * Has what the source requires of ours loaded from its part. Every part, imported or required, says that it needs all
 * that the start loads, which it finds there: the bundler would else cut the start into a file for each set of parts
 * that share some of it. `parts`: by the paths of the modules that are required.
 */
function besideTheStart(parts: ReadonlyMap<string, string>, start: string, root: string): Plugin {
  return {
    name: 'beside-the-start',
    setup({ onResolve, onLoad }) {
      onResolve({ filter: /^\./ }, ({ kind, path, resolveDir }) => {
        const full = join(resolveDir, path);
        if (kind === 'dynamic-import') return { path: relative(root, full), namespace: 'part' };
        const part = kind === 'require-call' ? parts.get(`${full}.ts`) : undefined;
        return part === undefined ? undefined : { path: `./${part}.js`, external: true };
      });
      onLoad({ filter: /./, namespace: 'part' }, ({ path }) => ({
        contents: `import ${JSON.stringify(start)};\nexport * from ${JSON.stringify(`./${path}`)};`,
        resolveDir: root,
      }));
      onLoad({ filter: /\.ts$/ }, ({ path }) => {
        if (!parts.has(path)) return undefined;
        const text = readFileSync(path, 'utf8');
        return { contents: `import ${JSON.stringify(start)};\n${text}`, loader: 'ts' };
      });
    },
  };
}
