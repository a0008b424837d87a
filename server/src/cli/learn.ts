import { canBeConfirmed } from '../board/learn/confirm';
import { learnShape } from '../board/learn/shape';
import { profileSkeleton } from '../board/learn/skeleton';
import type { Catalog } from '../catalog/catalog';
import { learned } from '../features/learning';
import { readCapture } from './captures';
import { here } from './here';
import { readOptions } from './options';
import { exitCodes, UsageError } from './outcome';
import { type Terminal, visible } from './terminal';

const boardName = /^[a-z][a-z]*(-[a-z]+)*$/;

/** `propsoff learn`: a profile to standard output, what its settings may stand for to standard error. */
export async function runLearn(args: readonly string[], terminal: Terminal): Promise<number> {
  const { values, positionals } = readOptions(args, {
    name: { type: 'string' },
    confirm: { type: 'string', multiple: true },
    json: { type: 'boolean' },
  });
  const [path] = positionals;
  if (path === undefined || positionals.length > 1) throw new UsageError('learn takes one capture');
  const name = values.name ?? 'my-board';
  if (!boardName.test(name))
    throw new UsageError(`"${name}" is no name for a board: small letters, with hyphens between words`);
  const { catalog } = (await here()).additions;
  const confirmed = readConfirmed(values.confirm ?? [], catalog);
  const shape = learnShape(await readCapture(path, terminal));
  const told = learned(shape, catalog);
  const skeleton = profileSkeleton(shape, name, confirmed, catalog);
  if (skeleton === null) {
    terminal.err(`${told.summary}\n`);
    return exitCodes.findings;
  }
  if (values.json === true) {
    terminal.out(`${JSON.stringify({ version: 1, ...told }, null, 2)}\n`);
    return exitCodes.fine;
  }
  terminal.out(`${JSON.stringify(skeleton.profile, null, 2)}\n`);
  terminal.err(`${visible(told.summary)}\n`);
  const missed = [...confirmed.keys()].filter((key) => !skeleton.mapped.includes(key));
  for (const key of missed)
    terminal.err(`not taken: ${visible(key)}: no such setting, or its parameter can’t be held so\n`);
  for (const { key, value, proposals } of told.rows) {
    if (confirmed.has(key)) continue;
    const may = proposals.slice(0, 3).map(({ parameter, meaning }) => `${parameter} (${meaning})`);
    terminal.err(
      `${visible(`${key} ${value}`)}: ${may.length === 0 ? 'nothing near' : `perhaps ${may.join(', ')}`}\n`,
    );
  }
  terminal.err('Say --confirm "setting=parameter" for each that is right; nothing is taken by itself.\n');
  return exitCodes.fine;
}

function readConfirmed(given: readonly string[], catalog: Catalog): ReadonlyMap<string, string> {
  return new Map(
    given.map((text) => {
      const at = text.lastIndexOf('=');
      const [key, parameter] = [text.slice(0, at), text.slice(at + 1)];
      if (at < 1) throw new UsageError(`--confirm takes "setting=parameter", not "${text}"`);
      if (!catalog.parameters.has(parameter)) throw new UsageError(`there is no parameter ${parameter}`);
      if (!canBeConfirmed(catalog, parameter))
        throw new UsageError(
          `${parameter} is held in several settings or members: name it in the profile by hand`,
        );
      return [key, parameter] as const;
    }),
  );
}
