import type { AcceptanceChange } from '../../board/kept/accepted';
import type { BoardLayer } from '../../board/layer/layer';
import type { FileEdits } from '../text-edits';

/**
 * A risk of a setting that is accepted beside its text, its reason still empty. Null where it accepts something already,
 * or the file there can't be read. `scriptLine`: the setting's in the script that the text comes to.
 */
export function acceptedBeside(
  layer: BoardLayer,
  scriptLine: number,
  check: string,
): AcceptanceChange | null {
  const { settings, lines, kept } = layer;
  const setting = settings[scriptLine];
  if (setting === undefined || lines[scriptLine]?.acceptance !== null || kept.fault !== null) return null;
  const { groups, name, occurrence, item } = setting;
  return { withdraw: null, accept: { setting: { groups, name, occurrence, item }, check, reason: '' } };
}

/** An edit of an acceptance that is kept beside the text: it goes, or its check is called otherwise. Null for any other. */
export function changeBeside({ lines }: BoardLayer, files: readonly FileEdits[]): AcceptanceChange | null {
  const [edit, ...others] = files.flatMap(({ edits }) => edits);
  if (edit === undefined || others.length > 0) return null;
  const line = lines[edit.range.start.line];
  const acceptance = line?.acceptance ?? null;
  const end = line?.spans?.value.end ?? Number.POSITIVE_INFINITY;
  if (acceptance === null || acceptance.at !== null || edit.range.start.character < end) return null;
  const { accepted } = acceptance;
  return {
    withdraw: accepted,
    accept: edit.newText === '' ? null : { ...accepted, check: edit.newText },
  };
}
