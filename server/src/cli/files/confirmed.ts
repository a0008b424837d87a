import type { Confirmation, Confirmed } from '../../board/learn/said';
import { readSaid } from '../../board/learn/said-text';
import type { Catalog } from '../../catalog/catalog';
import { nameText } from '../../catalog/model/common';
import { UsageError } from '../outcome';

/** What the options of `learn` say of the settings of a listing. */
export interface ConfirmingOptions {
  readonly confirm?: readonly string[];
  readonly role?: readonly string[];
  readonly port?: readonly string[];
  readonly 'port-word'?: readonly string[];
}

/** Reads what is confirmed; a line that can't be read stops the command, with what is wrong in it. */
export function readConfirmed(options: ConfirmingOptions, catalog: Catalog): Confirmed {
  const settings = new Map<string, Confirmation[]>();
  const add = (text: string, option: string, isRole: boolean) => {
    const read = readSaid(text, catalog);
    if (read.kind === 'wrong') throw new UsageError(`${option}: ${read.message}`);
    const said = isRole ? { means: read.said.means, isRole: true } : read.said;
    const known = settings.get(read.key) ?? [];
    if (known.some((one) => one.item === said.item && one.bit === said.bit))
      throw new UsageError(
        `${option}: ${read.key} is said twice: say "value 1" or "bit 0" and so on where several stand in it`,
      );
    settings.set(read.key, [...known, said]);
  };
  for (const text of options.confirm ?? []) add(text, '--confirm', false);
  for (const text of options.role ?? []) add(text, '--role', true);
  return {
    settings,
    ports: { ports: portsOf(options.port ?? []), words: portWords(options['port-word'] ?? [], catalog) },
  };
}

function portsOf(given: readonly string[]): ReadonlyMap<string, string> {
  return new Map(
    given.map((text) => {
      const [key, port] = halves(text, '--port', 'setting=port');
      if (!nameText.safeParse(port).success)
        throw new UsageError(
          `--port: "${port}" is no name of a port: small letters and digits, such as uart3`,
        );
      return [key, port] as const;
    }),
  );
}

function portWords(given: readonly string[], catalog: Catalog): ReadonlyMap<string, string | null> {
  return new Map(
    given.map((text) => {
      const [word, means] = halves(text, '--port-word', 'word=parameter');
      if (means === 'unused') return [word, null] as const;
      const parameter = catalog.parameter(means)?.parameter;
      if (parameter?.kind !== 'word' || parameter.choicesFrom !== 'ports')
        throw new UsageError(`--port-word: "${means}" names no port; receiver.port does, or say "unused"`);
      return [word, means] as const;
    }),
  );
}

function halves(text: string, option: string, wanted: string): readonly [string, string] {
  const at = text.lastIndexOf('=');
  if (at < 1) throw new UsageError(`${option} takes "${wanted}", not "${text}"`);
  return [text.slice(0, at).trim(), text.slice(at + 1).trim()];
}
