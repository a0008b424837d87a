import { sameValue } from '../../board/listing/value-look';
import { decimalMarkOf } from '../../board/profile/profile';
import { perCentChange, roleOfOwn } from '../../board/profile/roles';
import type { Catalog, FoundParameter } from '../../catalog/catalog';
import type { BoardProfile } from '../../catalog/model/board-profile';
import type { Craft } from '../../craft/craft';
import { membershipsIn } from '../../craft/memberships';
import type { Value } from '../../craft/value';
import { CraftView } from '../../craft/view';
import { isOwnPath } from '../../language/path-text';
import { jobStages } from '../job-stages';
import { type Target, targetOfPath } from '../target';

/** One side of a comparison. */
export interface Side {
  readonly craft: Craft;
  readonly pack: string | null;
}

/** What a parameter holds on one side. */
export interface HeldValue {
  /** As this side's script names it: `pack.sprint.cells`. */
  readonly path: string;
  /** As a script writes it; null where nothing sets it and the catalogue has no default. */
  readonly text: string | null;
  /** Whether the script leaves it out, and the default holds. */
  readonly isAssumed: boolean;
  readonly target: Target | null;
}

/** A parameter that does not hold the same on both sides. */
export interface ChangedSetting {
  /** With `<pack in view>` where each side names its own pack. */
  readonly path: string;
  readonly title: string;
  readonly stage: string;
  readonly before: HeldValue;
  readonly after: HeldValue;
  /** `10 % less`: of one of the board's own settings of which only its role is known; null for all others. */
  readonly change: string | null;
}

/** A switch, a notch, an overlay element … that only one side has. */
export interface ChangedMember {
  readonly path: string;
  readonly title: string;
  readonly stage: string;
  readonly is: 'added' | 'removed';
  readonly target: Target | null;
}

export interface SettingChanges {
  readonly settings: readonly ChangedSetting[];
  readonly members: readonly ChangedMember[];
}

const inView = '<pack in view>';

/** What differs, in the order of the job. Flights are notes, not settings, and are left out. */
export function settingChanges(before: Side, after: Side): SettingChanges {
  const { catalog } = before.craft;
  const [one, other] = [pathsOf(before), pathsOf(after)];
  const keys = [...new Set([...one.keys(), ...other.keys()])].filter((key) => !key.startsWith('flight.'));
  const lonely = new Map<string, ChangedMember>();
  const settings: ChangedSetting[] = [];
  for (const key of keys) {
    const member = lonelyMember(key, before, after, one.get(key) ?? other.get(key) ?? key);
    if (member !== null) {
      lonely.set(member.path, lonely.get(member.path) ?? member);
      continue;
    }
    const changed = changedSetting(key, before, after);
    if (changed !== null) settings.push(changed);
  }
  const order = new Map([...catalog.parameters.keys()].map((name, index) => [name, index]));
  const placeOf = ({ path }: { readonly path: string }) =>
    order.get(catalog.parameter(path.replace(inView, 'any'))?.name ?? '') ?? order.size;
  const byJob = (a: ChangedSetting | ChangedMember, b: ChangedSetting | ChangedMember) =>
    stageOf(a) - stageOf(b) || placeOf(a) - placeOf(b);
  return { settings: settings.sort(byJob), members: [...lonely.values()].sort(byJob) };
}

function stageOf({ stage }: { readonly stage: string }): number {
  return jobStages.findIndex(([name]) => name === stage);
}

/** Every path that a side sets, by a name that is the same for the packs in view of both sides. */
function pathsOf({ craft, pack }: Side): ReadonlyMap<string, string> {
  const own = pack === null ? null : `pack.${pack}.`;
  return new Map(
    craft
      .settingPaths()
      .filter((path) => craft.catalog.parameter(path) !== undefined)
      .map((path) => [
        own !== null && path.startsWith(own) ? `pack.${inView}.${path.slice(own.length)}` : path,
        path,
      ]),
  );
}

function pathOn(key: string, { pack }: Side): string {
  return key.replace(inView, pack ?? inView);
}

function changedSetting(key: string, before: Side, after: Side): ChangedSetting | null {
  const [was, is] = [held(before, pathOn(key, before)), held(after, pathOn(key, after))];
  if (isSame(was.value, is.value)) return null;
  const parameter = before.craft.catalog.parameter(pathOn(key, before))?.parameter;
  if (parameter === undefined) return null;
  const role = playedRole(pathOn(key, after), before, after);
  const { title, stage } = role?.parameter ?? parameter;
  return {
    path: key,
    title: role === undefined ? title : `${title}, by its role`,
    stage,
    before: was.held,
    after: is.held,
    change: role === undefined ? null : changeOf(was.value, is.value, after.craft.board()),
  };
}

/** What a setting of the board's own is by its role, as the board of either side has it. */
function playedRole(path: string, before: Side, after: Side): FoundParameter | undefined {
  if (!isOwnPath(path)) return undefined;
  for (const { craft } of [after, before]) {
    const board = craft.board();
    const role = board === undefined ? undefined : roleOfOwn(board, path, craft.catalog);
    if (role !== undefined) return role;
  }
  return undefined;
}

function changeOf(one: Value | null, other: Value | null, board: BoardProfile | undefined): string | null {
  if (one?.kind !== 'bare' || other?.kind !== 'bare') return null;
  return perCentChange(one.value, other.value, decimalMarkOf(board));
}

function held(
  { craft, pack }: Side,
  path: string,
): { readonly value: Value | null; readonly held: HeldValue } {
  const view = new CraftView(craft, pack);
  const held = { path, text: view.written(path), isAssumed: !view.isSet(path) };
  return { value: view.value(path), held: { ...held, target: targetOfPath(view, path) } };
}

/** The unit that a value is written in makes no difference, nor do the decimals of a number that only the board knows. */
function isSame(one: Value | null, other: Value | null): boolean {
  if (one?.kind === 'bare' && other?.kind === 'bare') return sameValue(one.value, other.value);
  return withoutUnit(one) === withoutUnit(other);
}

function withoutUnit(value: Value | null): string {
  return JSON.stringify(value, (key, part) => {
    if (key === 'unit') return undefined;
    return typeof part === 'number' ? Number(part.toPrecision(12)) : part;
  });
}

/** The member of a collection that a path belongs to, where only one of the two sides has it. */
function lonelyMember(key: string, before: Side, after: Side, path: string): ChangedMember | null {
  const { catalog } = before.craft;
  for (const { collection, member } of membershipsIn(key, catalog)) {
    if (member === inView) continue;
    const [was, is] = [before, after].map(({ craft }) => craft.members(collection).includes(member));
    if (was === is) continue;
    const found = catalog.parameter(path)?.parameter;
    const owner = new CraftView((is ? after : before).craft, (is ? after : before).pack);
    return {
      path: `${collection}.${member}`,
      title: memberTitle(catalog, collection, member),
      stage: found?.stage ?? 'remember',
      is: is ? 'added' : 'removed',
      target: targetOfPath(owner, path),
    };
  }
  return null;
}

function memberTitle(catalog: Catalog, collection: string, member: string): string {
  const known = catalog.members(collection).find(({ name }) => name === member);
  return known?.title ?? `${catalog.collection(collection)?.one ?? collection}: ${member}`;
}
