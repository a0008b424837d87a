import type { KnownParameter } from '../../catalog/known-parameter';
import { takes } from '../../catalog/path-tree';
import type { Craft } from '../../craft/craft';
import { inputKeys } from '../../craft/keys';
import type { ScriptLine } from '../../language/script-line';
import type { Snapshot } from '../snapshot';

/** A parameter that can stand on a line, and its name as written there: the rest of its path below the section. */
export interface OpenName {
  readonly known: KnownParameter;
  readonly rest: string;
}

/**
 * Parameters that can be set on a line: below its section, or under their whole path before any section. What
 * another line of the script sets for the same packs is left out. Members of a collection come in once its
 * name is typed, or where there is nothing else to say; those that are settings themselves always do.
 */
export function openNames(snapshot: Snapshot, line: ScriptLine, typed: string): readonly OpenName[] {
  const { path: section, pack } = line.section;
  if (section === null) return [];
  const prefix = section === '' ? '' : `${section}.`;
  return namesBelow(snapshot, section)
    .flatMap((name) => withMembers(snapshot, section, name, typed))
    .filter(({ rest }) => {
      const lines = snapshot.script.lines(inputKeys.setting(`${prefix}${rest}`, pack));
      return lines.every((other) => other === line);
    });
}

function namesBelow({ catalog }: Snapshot, section: string): readonly OpenName[] {
  if (section !== '') return catalog.parametersUnder(section);
  return [...catalog.parameters.values()].map((known) => ({ known, rest: known.name }));
}

/** `arm.channel`, `stop-motors.channel` and so on for `<function>.channel`. */
function withMembers(
  snapshot: Snapshot,
  section: string,
  { known, rest }: OpenName,
  typed: string,
): readonly OpenName[] {
  const { catalog } = snapshot;
  const open = /^([^<]*)<[a-z]+>(.*)$/.exec(rest);
  if (open === null) return [{ known, rest }];
  const [, before = '', after = ''] = open;
  const path = [section, before.slice(0, -1)].filter((part) => part !== '').join('.');
  const isTyped = typed.startsWith(before);
  // A numbered setting is one line more, and is found as any other: `power-steps.1`.
  const isLine = after === '' && catalog.collection(path)?.keys.kind === 'numbers';
  if (!isTyped && !isLine) return [];
  const members = membersFor(snapshot, path, isTyped ? typed.slice(before.length) : '');
  return members
    .map((member) => ({ known, rest: `${before}${member}${after}` }))
    .filter(
      (name) => catalog.parameter(section === '' ? name.rest : `${section}.${name.rest}`) !== undefined,
    );
}

/** The member that is typed already, or all that can be. */
function membersFor({ catalog, craft }: Snapshot, path: string, typed: string): readonly string[] {
  const collection = catalog.collection(path);
  if (collection === undefined) return [];
  const dot = typed.indexOf('.');
  if (dot > 0) return takes(collection, typed.slice(0, dot)) ? [typed.slice(0, dot)] : [];
  const known = catalog
    .members(path)
    .map(({ name }) => name)
    .filter((name) => isWorthOffering(craft, path, name));
  return [...new Set([...craft.members(path).filter((name) => takes(collection, name)), ...known])];
}

/**
 * Whether a member is worth offering: of a numbered collection only those that the craft has and the next free one,
 * since any of thirty-two would be right and none of them new.
 */
export function isWorthOffering(craft: Craft, collection: string, name: string): boolean {
  if (!/^\d+$/.test(name) || craft.catalog.collection(collection)?.keys.kind !== 'numbers') return true;
  const number = Number(name);
  const has = (other: number) => craft.members(collection).includes(String(other));
  return has(number) || number === 1 || has(number - 1);
}
