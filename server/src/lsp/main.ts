import { setFlagsFromString } from 'node:v8';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { builtInBundle } from '../catalog/built-in';
import { NodeFiles } from '../host/node-files';
import { textBeside } from '../host/text-beside';
import { EditorFiles } from './editor-files';
import { FilesByScheme } from './files-by-scheme';
import { serve } from './server';

// Beside an editor, memory counts more than the time in which garbage is collected: the heap grows by a quarter
// before it is, where Node would let it grow to several times what is held.
setFlagsFromString('--heap-growing-percent=25');
// For the same reason the space for what was just made stays as small as it is at the start: what an edit makes fits.
setFlagsFromString('--semi-space-growth-factor=1');

// Standard output carries the protocol: whatever a library logs must not get into it.
// biome-ignore lint/suspicious/noConsole: this is what keeps the console off standard output
for (const level of ['log', 'info', 'debug', 'warn'] as const) console[level] = console.error;

// A promise that nobody waits for must not end the server: the rest goes on.
process.on('unhandledRejection', (reason) => process.stderr.write(`${String(reason)}\n`));

const connection = createConnection(ProposedFeatures.all);
const files = new FilesByScheme(new NodeFiles([]), new EditorFiles(connection));
serve(connection, builtInBundle(textBeside), files);
