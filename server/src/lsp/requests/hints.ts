import type { CodeLens, InlayHint, InlayHintParams } from 'vscode-languageserver';
import { codeLenses } from '../../features/code-lenses';
import { namedRecordings } from '../../features/flight/recorded';
import { inlayHints } from '../../features/inlay-hints';
import { InlayHintKind } from '../library';
import type { ScriptContext } from './about-script';

export function hintsIn({ session, snapshot }: ScriptContext, { range }: InlayHintParams): InlayHint[] {
  return inlayHints(snapshot, session.range(snapshot.script, range)).map(({ position, label, tooltip }) => ({
    position: session.clientPosition(snapshot.script, position),
    label,
    tooltip,
    kind: InlayHintKind.Type,
    paddingLeft: true,
  }));
}

/** Their commands are those of our own client; another one gets the figures alone, with nothing to click. */
export function lensesOf({ session, snapshot }: ScriptContext): CodeLens[] {
  const { commands } = session.client.own;
  const { uri } = snapshot;
  const recordings = commands ? namedRecordings(snapshot) : [];
  const opening = recordings.map(
    (named): CodeLens => ({
      range: session.clientRange(snapshot.script, named.range),
      command: { title: 'Open Recording', command: 'propsoff.openRecording', arguments: [named.uri] },
    }),
  );
  const sections = codeLenses(snapshot).flatMap(({ range, figures, tryable, pack }): readonly CodeLens[] => {
    const at = session.clientRange(snapshot.script, range);
    const trying = { title: 'Try a value', command: 'propsoff.tryValue', arguments: [uri, tryable, pack] };
    const shown = { title: figures ?? '', command: commands ? 'propsoff.showBuildSheet' : '' };
    return [
      ...(figures === null ? [] : [{ range: at, command: shown }]),
      ...(commands ? [{ range: at, command: trying }] : []),
    ];
  });
  return [...sections, ...opening];
}
