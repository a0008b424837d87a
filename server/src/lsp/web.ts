import {
  BrowserMessageReader,
  BrowserMessageWriter,
  createConnection,
  ProposedFeatures,
} from 'vscode-languageserver/browser';
import { builtInBundle } from '../catalog/built-in';
import { EditorFiles } from './editor-files';
import { serve } from './server';

/** The worker that this runs in: the client talks to it by messages. */
declare const self: ConstructorParameters<typeof BrowserMessageReader>[0];

const connection = createConnection(
  ProposedFeatures.all,
  new BrowserMessageReader(self),
  new BrowserMessageWriter(self),
);

serve(connection, builtInBundle(), new EditorFiles(connection));
