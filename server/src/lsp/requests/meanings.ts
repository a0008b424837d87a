import { pathAt } from '../../additions/json-text';
import { readBoard } from '../../additions/read-board';
import { withMeanings } from '../../board/learn/edit/with-meanings';
import { type LearnedSetting, settingName } from '../../board/learn/learned-settings';
import { profileText } from '../../board/learn/profile-text';
import type { Confirmation } from '../../board/learn/said';
import { hardwareFaults } from '../../board/profile/hardware-faults';
import { profileOf } from '../../board/profile/profile';
import { titleOf } from '../../catalog/board-title';
import type { BoardProfile } from '../../catalog/model/board-profile';
import {
  portRoles as portRolesModel,
  type RowMeant,
  rowMeaning,
  sayingModel,
} from '../../catalog/model/board-profile';
import { fromJson } from '../../catalog/model/common';
import { choiceSaid, meaningRows, saidOf } from '../../features/board/meanings';
import {
  type ParameterForm,
  parameterForm,
  type SayableParameter,
  sayableParameters,
} from '../../features/board/parameter-form';
import { portNames } from '../../features/board/port-names';
import { portParameters } from '../../features/board/port-settings';
import type { NotSaid } from '../board-protocol';
import type {
  BoardInHand,
  BoardLesson,
  BoardMeanings,
  HardwareAnswer,
  LessonAnswer,
  MeaningChoice,
  SaidOfRow,
  SayingOfRow,
  SayMeaningsAnswer,
} from '../learn-protocol';
import { type HeldBoard, heldBoard } from './board-in-hand';
import type { Services } from './row';
import { withLesson } from './teach';

/** So many lines that were not understood are shown one by one. */
const mostLeft = 200;

interface AboutBoard {
  readonly of: BoardInHand;
}

export async function boardMeanings(
  { session }: Services,
  { of }: AboutBoard,
): Promise<BoardMeanings | NotSaid> {
  const held = await heldBoard(session, of);
  if (held.kind === 'refused') return held;
  const { board, listing, settings } = held;
  const rows = meaningRows(board, settings, session.workspace.catalog, listing);
  const left = listing?.left ?? [];
  return {
    kind: 'meanings',
    board: board.name,
    title: titleOf(board),
    isNew: held.isNew,
    isByName: board.name === held.own,
    rows,
    left: left.slice(0, mostLeft).map(({ number, at, reason }) => ({
      line: number,
      text: of.text.slice(at.start, at.end),
      reason,
    })),
    leftCount: left.length,
    hardware: board.hardware ?? {},
    ports: portNames(rows),
    portParameters: portParameters(session.workspace.catalog),
    portRoles: board.portRoles ?? { roles: {} },
  };
}

export async function meaningsSaid(
  { session }: Services,
  {
    of,
    said,
    portRoles,
  }: AboutBoard & { readonly said: readonly SaidOfRow[]; readonly portRoles: string | null },
): Promise<SayMeaningsAnswer> {
  const held = await heldBoard(session, of);
  if (held.kind === 'refused') return held;
  const { catalog } = session.workspace;
  const meant = new Map<string, RowMeant>();
  const left: { key: string; why: string }[] = [];
  for (const { key, row } of said) {
    const read = fromJson(rowMeaning, row);
    if (read === null) left.push({ key, why: 'what is said of it can’t be written into a profile' });
    else meant.set(key, read);
  }
  const words = portRoles === null ? null : fromJson(portRolesModel, portRoles);
  const spoken = { rows: meant, ...(words === null ? {} : { portRoles: words }) };
  const { board, refused } = withMeanings(held.board, held.settings, spoken, catalog);
  const profile = profileOf(board);
  const byKey = settingsByKey(held);
  return {
    kind: 'said',
    profile: profileText(board),
    rows: [...meant.keys()].flatMap((key) => {
      const setting = byKey.get(key);
      return setting === undefined ? [] : [{ key, said: saidOf(setting, profile, catalog).said }];
    }),
    left: [...left, ...[...refused].map(([key, why]) => ({ key, why }))],
  };
}

export async function choicesSaid(
  { session }: Services,
  { of, sayings }: AboutBoard & { readonly sayings: readonly SayingOfRow[] },
): Promise<readonly { readonly key: string; readonly choice: MeaningChoice | null }[]> {
  const held = await heldBoard(session, of);
  if (held.kind === 'refused') return [];
  const byKey = settingsByKey(held);
  return sayings.map(({ key, saying }) => {
    const setting = byKey.get(key);
    const said = sayingIn(saying);
    const isSaid = setting !== undefined && said !== null;
    return { key, choice: isSaid ? choiceSaid(held.board, setting, said, session.workspace.catalog) : null };
  });
}

function settingsByKey({ settings }: HeldBoard): ReadonlyMap<string, LearnedSetting> {
  return new Map(settings.map((setting) => [settingName(setting), setting]));
}

function parsed(json: string): unknown {
  try {
    return JSON.parse(json);
  } catch {
    return null;
  }
}

/** What a client says of a setting; null for what can't be said. */
function sayingIn(json: string): Confirmation | null {
  const read = fromJson(sayingModel, json);
  if (read === null) return null;
  const { means, isRole, parts, item, bit, bits, counted, spelled } = read;
  return {
    means,
    ...(isRole === undefined ? {} : { isRole }),
    ...(parts === undefined ? {} : { parts }),
    ...(item === undefined ? {} : { item }),
    ...(bit === undefined ? {} : { bit }),
    ...(bits === undefined ? {} : { bits }),
    ...(counted === undefined ? {} : { counted }),
    ...(spelled === undefined ? {} : { spelled }),
  };
}

export function formOfParameter(
  { session }: Services,
  { means }: { readonly means: string },
): ParameterForm | null {
  return parameterForm(means, session.workspace.catalog);
}

export function sayable({ session }: Services): readonly SayableParameter[] {
  return sayableParameters(session.workspace.catalog);
}

export async function hardwareSaid(
  { session }: Services,
  { of, hardware }: AboutBoard & { readonly hardware: string },
): Promise<HardwareAnswer> {
  const held = await heldBoard(session, of);
  if (held.kind === 'refused') return held;
  const { hardware: _, ...rest } = held.board;
  const told = parsed(hardware);
  const text = JSON.stringify(isEmpty(told) ? rest : { ...rest, hardware: told });
  const read = readBoard(text, rest.name);
  if (read.kind === 'broken')
    return {
      kind: 'faults',
      faults: read.problems.map(({ message, start }) => ({
        at: pathAt(text, start).slice(1).join('.'),
        message,
      })),
    };
  const faults = hardwareFaults(read.board.hardware ?? {}, session.workspace.catalog);
  if (faults.length > 0)
    return { kind: 'faults', faults: faults.map(({ at, message }) => ({ at: at.join('.'), message })) };
  return { kind: 'said', profile: profileText(inOrder(read.board)) };
}

function isEmpty(told: unknown): boolean {
  return typeof told === 'object' && told !== null && Object.keys(told).length === 0;
}

/** The hardware stands before the settings, whenever it was said. */
function inOrder({ name, title, summary, source, hardware, ...rest }: BoardProfile): BoardProfile {
  return {
    name,
    ...(title === undefined ? {} : { title }),
    ...(summary === undefined ? {} : { summary }),
    ...(source === undefined ? {} : { source }),
    ...(hardware === undefined ? {} : { hardware }),
    ...rest,
  };
}

export async function lessonSaid(
  { session }: Services,
  { of, lesson }: AboutBoard & { readonly lesson: BoardLesson },
): Promise<LessonAnswer> {
  const held = await heldBoard(session, of);
  if (held.kind === 'refused') return { ...held, asks: false };
  if (held.listing === null)
    return { kind: 'refused', message: 'No text of this board is at hand.', asks: false };
  const made = withLesson(held.board, held.listing, lesson, session.workspace.catalog);
  if (made.kind === 'refused') return made;
  return { kind: 'taught', profile: profileText(made.board), said: made.said };
}
