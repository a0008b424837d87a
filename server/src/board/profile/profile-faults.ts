import type { Catalog } from '../../catalog/catalog';
import { type Fault, faultsWithin } from '../../catalog/faults/fault';
import { readQuantity } from '../../catalog/faults/quantities';
import type { BoardProfile, BoardText } from '../../catalog/model/board-profile';
import { meaningFaults } from '../meaning/meaning-faults';
import { portFaults } from '../meaning/port-roles';
import { formFaults, unreadableRows } from './form-faults';
import { hardwareFaults } from './hardware-faults';
import { membersOf, openMember, withMember } from './members';
import { type ProfileRow, rowsOf } from './profile';

/** What is wrong with a board profile, in the catalogue that it is read with. */
export function profileFaults(board: BoardProfile, catalog: Catalog): readonly Fault[] {
  const hardware = faultsWithin(['hardware'], hardwareFaults(board.hardware ?? {}, catalog));
  const { text, settings } = board;
  if (text === undefined) {
    const needed = { at: ['settings'], message: 'settings need "text": how a line is written' };
    return settings.length > 0 ? [...hardware, needed] : hardware;
  }
  const rows = rowsOf(board);
  const forms = formFaults(text);
  return [
    ...hardware,
    ...faultsWithin(['text'], [...forms, ...textFaults(text)]),
    ...rows.flatMap((row) => faultsWithin(['settings', row.index], memberPlaceFaults(row))),
    ...nameFaults(rows, forms.length > 0 ? new Set() : unreadableRows(rows, board), board),
    ...meaningFaults(rows, board, catalog),
    ...portFaults(board, catalog),
  ];
}

function textFaults({ flags, pace }: BoardText): readonly Fault[] {
  const pause = pace === undefined ? undefined : readQuantity(pace.pause, 'time').problem;
  return [
    ...(pause === undefined ? [] : [{ at: ['pace', 'pause'], message: pause }]),
    ...(flags !== undefined && flags.on === flags.off
      ? [{ at: ['flags'], message: 'on and off are the same' }]
      : []),
  ];
}

/** `{member}` needs a meaning that has members, and one place. */
function memberPlaceFaults({ groups, name, setting }: ProfileRow): readonly Fault[] {
  const places = [...groups, name].join('\n').split(openMember).length - 1;
  if (places === 0) return [];
  const at = ['name'];
  if (setting.means === undefined)
    return [{ at, message: `${openMember} needs "means": whose members are these?` }];
  if (setting.occurrence !== undefined)
    return [{ at: ['occurrence'], message: `a name with ${openMember} has no occurrence of its own` }];
  return places > 1 ? [{ at, message: `${openMember} stands there twice` }] : [];
}

/** Every name must come back from the line that it is written in, and none may stand there twice. */
function nameFaults(
  rows: readonly ProfileRow[],
  unreadable: ReadonlySet<ProfileRow>,
  board: BoardProfile,
): readonly Fault[] {
  const seen = new Set<string>();
  return rows.flatMap((row): readonly Fault[] => {
    const at = ['settings', row.index, 'name'];
    for (const key of keysOf(row, board)) {
      if (seen.has(key)) return [{ at, message: `${row.name} stands in the profile twice` }];
      seen.add(key);
    }
    return unreadable.has(row)
      ? [{ at, message: `${row.name} can’t be told apart from the rest of its line` }]
      : [];
  });
}

/** What a row is looked up by: with each member that the board knows. */
function keysOf({ groups, name, setting, item }: ProfileRow, board: BoardProfile): readonly string[] {
  const isOpen = [...groups, name].some((text) => text.includes(openMember));
  const members = isOpen ? membersOf(board, setting.means) : null;
  // Two members with one spelling are told where they are spelled.
  return (members === null ? [null] : [...new Set(members.values())]).map((spelled) =>
    JSON.stringify([
      groups.map((group) => withMember(group, spelled)),
      withMember(name, spelled),
      setting.occurrence ?? 0,
      item ?? 0,
    ]),
  );
}
