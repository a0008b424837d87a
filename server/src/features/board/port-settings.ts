import { type LearnedSetting, settingName } from '../../board/learn/learned-settings';
import { scriptWordOf } from '../../board/learn/words/script-word';
import { roleOfPort } from '../../board/meaning/port-roles';
import type { Catalog } from '../../catalog/catalog';
import type { BoardProfile } from '../../catalog/model/board-profile';
import type { MeaningSaid } from './meaning-row';
import type { SayableParameter } from './parameter-form';

const numbered = /(uart|serial|port|schnittstelle)s?[^\p{L}\p{N}]*(\d{1,2})/iu;
/** Words that say no more than that it is the port's use; beside them stands at most one that nobody knows. */
const use =
  /^(?:ports?|serial|uarts?|schnittstellen?|roles?|uses?|used|for|function|job|task|device|does|carries|of|the|is|zweck|aufgabe|rolle|usage)?$/i;
/** What else boards say of a port. */
const another =
  /speed|rate|baud|bit|invert|swap|half|duplex|wire|pin|pull|level|volt|name|label|tempo|stop|parity/i;
/** So many ports at least: one alone may be anything. */
const fewest = 2;

/** By the keys of settings that may say what a port is for, that port as a script can write it. */
export function portsSayable(settings: readonly LearnedSetting[]): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  const alike = new Map<string, number>();
  const named = settings.flatMap((setting) => {
    const one = portNamed(setting);
    if (one === null) return [];
    alike.set(one.like, (alike.get(one.like) ?? 0) + 1);
    return [{ key: settingName(setting), ...one }];
  });
  for (const { key, port, like } of named) if ((alike.get(like) ?? 0) >= fewest) found.set(key, port);
  return found;
}

interface PortNamed {
  readonly port: string;
  /** What is the same for all ports. */
  readonly like: string;
}

/** By its name alone, else by that with its group: `port 3`, `[ports] 3`. */
function portNamed({ groups, name, look }: LearnedSetting): PortNamed | null {
  if (look === 'flag' || look === 'list') return null;
  const group = groups.join(' / ').replace(/\d+/g, '');
  const own = portIn(name) ?? portIn(`${groups.at(-1) ?? ''} ${name}`);
  return own === null ? null : { ...own, like: `${group} ${own.like}` };
}

function portIn(text: string): PortNamed | null {
  const [whole = '', word = '', number = ''] = numbered.exec(text) ?? [];
  const like = text.replace(whole, '');
  const others = like.split(/[^\p{L}\p{N}]+/u).filter((one) => !use.test(one));
  const isUse = others.length < 2 && !others.some((one) => another.test(one));
  const port = scriptWordOf(`${word.toLowerCase()}${number}`);
  return whole === '' || !isUse || port === null ? null : { port, like };
}

/** Parameters that name a port. */
export function portParameters(catalog: Catalog): readonly SayableParameter[] {
  return [...catalog.parameters.values()].flatMap(({ name, parameter }) =>
    parameter.kind === 'word' && parameter.choicesFrom === 'ports' && !name.includes('<')
      ? [{ means: name, title: parameter.title }]
      : [],
  );
}

/** What the setting of a port says. */
export function portSaid(
  { value }: LearnedSetting,
  port: string,
  board: BoardProfile,
  catalog: Catalog,
): MeaningSaid {
  const means = roleOfPort(board, value);
  const title = means === null ? undefined : catalog.parameter(means)?.parameter.title;
  return {
    means: port,
    title: `What ${port} is for`,
    family: 'ports',
    isRole: false,
    row: { port },
    quantity: title ?? (value === board.portRoles?.unused ? 'unused' : null),
    usual: null,
    lies: null,
  };
}
