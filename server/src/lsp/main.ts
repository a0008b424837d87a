import { setFlagsFromString } from 'node:v8';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { builtInBundle } from '../catalog/built-in';
import { NodeFiles } from '../file-system/node-files';
import { textBeside, uriBeside } from '../file-system/read-file';
import { EditorFiles } from './documents/editor-files';
import { FilesByScheme } from './documents/files-by-scheme';
import { serve } from './server';
import { LifeCycle } from './transport/life-cycle';
import { logLine, nodeTransport, type Transport } from './transport/node-transport';

// Beside an editor, memory counts more than the time in which garbage is collected: the heap grows by a quarter
// before it is, where Node would let it grow to several times what is held.
setFlagsFromString('--heap-growing-percent=25');
// For the same reason the space for what was just made stays as small as it is at the start: what an edit makes fits.
setFlagsFromString('--semi-space-growth-factor=1');

// Standard output carries the protocol: whatever a library logs must not get into it.
// biome-ignore lint/suspicious/noConsole: this is what keeps the console off standard output
globalThis.console = new console.Console(process.stderr, process.stderr);
// A log that nobody reads any more is no reason to end.
process.stderr.on('error', () => undefined);

// A promise that nobody waits for must not end the server: the rest goes on.
process.on('unhandledRejection', (reason) => logLine(String(reason)));

const transport = nodeTransport(process.argv);
if (transport === null) {
  logLine('the server talks over standard input and output only: start it by `propsoff server --stdio`');
  process.exitCode = 2;
} else start(transport);

function start({ reader, writer, onGone }: Transport): void {
  const lifeCycle = new LifeCycle(writer);
  const connection = createConnection(ProposedFeatures.all, reader, writer, { messageStrategy: lifeCycle });
  onGone(() => process.exit(lifeCycle.isShutDown ? 0 : 1));
  const files = new FilesByScheme(new NodeFiles([]), new EditorFiles(connection));
  serve(connection, builtInBundle(textBeside), files, () => uriBeside('CHECKS.md'));
}
