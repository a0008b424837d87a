import type { Craft } from '../../craft/craft';
import { CraftView } from '../../craft/view';
import type { DocumentEdit } from '../../language/document';
import { exactText } from '../../units/quantity';
import type { PlannedChannel } from './channels';
import { editsBetween } from './edits';
import { write } from './movable';

/** What writes a channel into a craft's script, as it says where it sends: by a frequency, else by band and channel. */
export function channelEdits(craft: Craft, { names, frequency }: PlannedChannel): readonly DocumentEdit[] {
  const [name] = names;
  const trial = craft.copied();
  const line = (path: string, to: string) => ({ path, to, pack: null, isForPack: false });
  const saysFrequency = new CraftView(craft, null).isSet('video.frequency');
  if (saysFrequency || name === undefined)
    write(trial, [line('video.frequency', exactText(frequency * 1e6, 'MHz'))]);
  else write(trial, [line('video.band', name.band), line('video.channel', String(name.channel))]);
  return editsBetween(craft.root.document, trial.root.document);
}
