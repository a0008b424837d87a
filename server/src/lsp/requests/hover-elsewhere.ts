import { hover } from '../../features/hover/hover';
import { isTooLong } from '../documents/long-documents';
import type { hoverElsewhereRequest } from '../protocol';
import type { OnServerFault } from '../server';
import type { Session } from '../session';
import type { Answers } from './on-demand';
import { failed } from './request';

/** Tells about texts that are only shown. They stay strangers to the workspace: nothing refers to or renames them. */
export function hoverElsewhereAnswer(
  { workspace }: Session,
  onFault: OnServerFault,
): Answers<typeof hoverElsewhereRequest> {
  return async ({ uri, text, position }) => {
    if (isTooLong(text.length)) return null;
    try {
      const craft = await workspace.detached(uri, text);
      const script = craft.root;
      const pack = craft.packs()[0] ?? null;
      const { catalog } = workspace;
      const snapshot = { uri, script, craft, catalog, pack, findings: () => workspace.check(craft) };
      return hover(snapshot, script.document.clamp(position));
    } catch (error) {
      return failed(onFault, 'hover over an earlier text', error);
    }
  };
}
