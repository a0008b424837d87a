import { fileName } from '../../craft/include-path';
import { besideFileOf, keptText, withChange } from '../../workspace/kept-beside';
import type { KeepAnswer, KeepParams } from '../board-protocol';
import type { Services } from './row';

/** The file beside a board's text with something of it changed; what can't be read is not overwritten. */
export async function keptChanged(
  { session: { workspace } }: Services,
  { uri, change }: KeepParams,
): Promise<KeepAnswer> {
  const kept = await workspace.keptBeside(uri);
  const file = besideFileOf(uri);
  if (kept.fault !== null)
    return { kind: 'refused', message: `${fileName(file)} can’t be read: ${kept.fault}. Mend it first.` };
  return { kind: 'file', uri: file, text: keptText(withChange(kept, change)) };
}
