import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { built } from '../../support/built';
import { asServersShip } from '../built-engine';
import type { Canned } from './canned';
import type { ServerOptions } from './language-server';
import type { Schema } from './schema';

/** Where the peers of this folder are installed. */
const modules = join(__dirname, '../installed/node_modules');
const node = process.execPath;

/** A folder for documents and schemas that goes with the machine's temporary files. */
export function scratch(): string {
  return mkdtempSync(join(tmpdir(), 'propsoff-bench-'));
}

function uriIn(folder: string, file: string): string {
  return pathToFileURL(join(folder, file)).href;
}

export function ours(folder: string): ServerOptions {
  return {
    name: 'propsoff',
    command: node,
    args: [built('server.js'), '--stdio'],
    uri: uriIn(folder, 'work.craft'),
    languageId: 'craft-script',
  };
}

/** A bundle of one file like ours, so that both start alike. */
export async function echo(folder: string, canned: Canned): Promise<ServerOptions> {
  const outfile = join(folder, 'echo-server.js');
  await build({
    entryPoints: [join(__dirname, 'echo-server.ts')],
    outfile,
    ...asServersShip,
  });
  return {
    ...ours(folder),
    name: 'echo server with as many canned findings',
    args: [outfile, '--stdio'],
    initializationOptions: canned,
  };
}

/** The general-purpose server for JSON. Asked for findings it gives them at once; else it waits before it sends them. */
export function jsonServer(folder: string, schema: Schema, isPulled: boolean): ServerOptions {
  const schemas = [{ fileMatch: ['*.json'], url: 'bench://schema.json', schema }];
  return {
    name: isPulled ? 'JSON server, asked at once' : 'JSON server as it comes (500 ms debounce)',
    command: node,
    args: [join(modules, 'vscode-langservers-extracted/bin/vscode-json-language-server'), '--stdio'],
    uri: uriIn(folder, 'work.json'),
    languageId: 'json',
    isPulled,
    settings: { json: { validate: { enable: true }, schemas } },
    initializationOptions: { provideFormatter: false, handledSchemaProtocols: ['file'] },
  };
}

export function yamlServer(folder: string, schema: Schema): ServerOptions {
  writeFileSync(join(folder, 'schema.json'), JSON.stringify(schema));
  const yaml = {
    validate: true,
    hover: true,
    completion: true,
    schemaStore: { enable: false },
    schemas: { [uriIn(folder, 'schema.json')]: '*.yaml' },
  };
  return {
    name: 'YAML server as it comes (200 ms debounce)',
    command: node,
    args: [join(modules, 'yaml-language-server/bin/yaml-language-server'), '--stdio'],
    uri: uriIn(folder, 'work.yaml'),
    languageId: 'yaml',
    settings: { yaml, http: {}, '[yaml]': {}, editor: {}, files: {} },
  };
}
