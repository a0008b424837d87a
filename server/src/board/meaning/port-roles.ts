import type { Catalog } from '../../catalog/catalog';
import type { Fault } from '../../catalog/faults/fault';
import type { BoardProfile } from '../../catalog/model/board-profile';
import { inputKeys } from '../../craft/keys';
import type { CraftView } from '../../craft/view';
import { type ProfileRow, rowsOf } from '../profile/profile';

/**
 * Boards that have a setting for each port say there what is connected to it; a script says of each device which port
 * it is connected to. What the setting of a port says in a script: the parameter that names the port; null for a port
 * without a role, and for a word that nobody has given one.
 */
export function roleOfPort({ portRoles }: BoardProfile, word: string): string | null {
  const found = Object.entries(portRoles?.roles ?? {}).find(([, spelled]) => spelled === word);
  return found?.[0] ?? null;
}

/** What a craft comes to for the settings of the board's ports. */
export interface PortEntries {
  /** By row, the parameter that says it and the board's word. */
  readonly words: ReadonlyMap<ProfileRow, { readonly path: string; readonly word: string }>;
  /** Parameters whose port the board has. */
  readonly taken: ReadonlySet<string>;
  /** Parameters that are not handed over, and why: the end of a sentence. */
  readonly left: ReadonlyMap<string, string>;
}

/** A port that has lost its role is handed over as unused; one of which the craft says nothing stays as it is. */
export function portEntries(
  rows: readonly ProfileRow[],
  { portRoles }: BoardProfile,
  view: CraftView,
): PortEntries {
  const words = new Map<ProfileRow, { readonly path: string; readonly word: string }>();
  const taken = new Set<string>();
  const left = new Map<string, string>();
  if (portRoles === undefined) return { words, taken, left };
  const byPort = new Map(
    rows.flatMap((row) => (row.setting.port === undefined ? [] : [[row.setting.port, row] as const])),
  );
  const { unused } = portRoles;
  const withdrawn = new Map<ProfileRow, string>();
  for (const [path, word] of Object.entries(portRoles.roles)) {
    const value = view.value(path);
    const port = value?.kind === 'word' ? value.value : null;
    const row = byPort.get(port ?? '');
    for (const before of portsSaid(view, path)) {
      const lost = before === port ? undefined : byPort.get(before);
      if (lost !== undefined) withdrawn.set(lost, path);
    }
    if (port === null) continue;
    const other = row === undefined ? undefined : words.get(row);
    if (row === undefined) left.set(path, `the board has no setting for ${port}`);
    else if (other !== undefined) left.set(path, `${port} has the role of ${other.path} already`);
    else {
      words.set(row, { path, word });
      taken.add(path);
    }
  }
  if (unused !== undefined)
    for (const [row, path] of withdrawn) if (!words.has(row)) words.set(row, { path, word: unused });
  return { words, taken, left };
}

/** Every port that some line of the craft gives a parameter, in whichever layer. */
function portsSaid(view: CraftView, path: string): readonly string[] {
  return view.craft.lines(inputKeys.setting(path)).flatMap(({ line: { statement } }) => {
    const value = statement.kind === 'setting' ? statement.value : null;
    return value?.kind === 'reference' ? [value.path.text] : [];
  });
}

/** What is wrong with what a profile says of the roles of its ports. */
export function portFaults(board: BoardProfile, catalog: Catalog): readonly Fault[] {
  const { portRoles, hardware } = board;
  const rows = rowsOf(board).filter(({ setting }) => setting.port !== undefined);
  const known = hardware?.ports?.map(({ name }) => name) ?? null;
  const seen = new Set<string>();
  return [
    ...(portRoles === undefined ? [] : roleFaults(portRoles, catalog)),
    ...rows.flatMap(({ setting: { port = '', means, items }, index }): readonly Fault[] => {
      const at = ['settings', index, 'port'];
      const again = seen.has(port);
      seen.add(port);
      if (portRoles === undefined) return [{ at, message: '"port" needs "portRoles": what its words mean' }];
      if (means !== undefined || items !== undefined)
        return [{ at, message: 'a setting that says the role of a port has no other meaning' }];
      if (again) return [{ at, message: `the role of ${port} is said by another setting already` }];
      return known === null || known.includes(port)
        ? []
        : [{ at, message: `the board has no port ${port}: ${known.join(', ')}` }];
    }),
  ];
}

function roleFaults(
  { roles, unused }: NonNullable<BoardProfile['portRoles']>,
  catalog: Catalog,
): readonly Fault[] {
  const words = [...Object.values(roles), ...(unused === undefined ? [] : [unused])];
  const twice = words.find((word, index) => words.indexOf(word) !== index);
  return [
    ...(twice === undefined ? [] : [{ at: ['portRoles'], message: `"${twice}" stands for two roles` }]),
    ...Object.keys(roles).flatMap((path) => {
      const parameter = catalog.parameter(path)?.parameter;
      const isPort = parameter?.kind === 'word' && parameter.choicesFrom === 'ports';
      return isPort ? [] : [{ at: ['portRoles', 'roles', path], message: `${path} names no port` }];
    }),
  ];
}
