import {
  BrowserMessageReader,
  BrowserMessageWriter,
  createConnection,
  ProposedFeatures,
} from 'vscode-languageserver/browser';
import { builtInBundle } from '../catalog/built-in';
import { EditorFiles } from './documents/editor-files';
import { serve } from './server';
import { LifeCycle } from './transport/life-cycle';

/** The worker that this runs in: the client talks to it by messages. */
declare const self: ConstructorParameters<typeof BrowserMessageReader>[0] & {
  onmessage: ((event: { readonly data: string }) => void) | null;
};

/** The first message is the catalogue, which lies in a file for all programs; those of the protocol follow. */
self.onmessage = ({ data }: { readonly data: string }) => {
  const writer = new BrowserMessageWriter(self);
  const connection = createConnection(ProposedFeatures.all, new BrowserMessageReader(self), writer, {
    messageStrategy: new LifeCycle(writer),
  });
  serve(
    connection,
    builtInBundle(() => data),
    new EditorFiles(connection),
  );
};
