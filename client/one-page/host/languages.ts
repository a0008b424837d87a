import type { URI } from 'vscode-uri';
import { type Diagnostic, Disposable, EventEmitter, type Range } from './values';

interface ActionProvider {
  provideCodeActions(document: unknown, range: Range, context: unknown): readonly unknown[];
}

const providers: { readonly language: string; readonly provider: ActionProvider }[] = [];

/** What our client itself offers to do about a line, beside the server. */
export const codeActionProviders = {
  register({ language }: { readonly language: string }, provider: ActionProvider): Disposable {
    providers.push({ language, provider });
    return new Disposable(() => undefined);
  },

  of(language: string): readonly ActionProvider[] {
    return providers.filter((one) => one.language === language).map(({ provider }) => provider);
  },
};

const marks = new Map<string, readonly Diagnostic[]>();
/** What a proof has marked in a text is another now. */
export const onMarked = new EventEmitter<string>();

export function marksIn(uri: string): readonly Diagnostic[] {
  return marks.get(uri) ?? [];
}

/** `DiagnosticCollection`: what a proof finds in the text that was captured. */
export function proofMarks() {
  const set = (uri: string, found: readonly Diagnostic[]) => {
    if (found.length === 0 && !marks.has(uri)) return;
    if (found.length === 0) marks.delete(uri);
    else marks.set(uri, found);
    onMarked.fire(uri);
  };
  const clear = () => {
    for (const uri of [...marks.keys()]) set(uri, []);
  };
  return {
    set: (uri: URI, found: readonly Diagnostic[]) => set(uri.toString(), found),
    delete: (uri: URI) => set(uri.toString(), []),
    clear,
    dispose: clear,
  };
}
