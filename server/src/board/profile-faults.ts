import type { Catalog } from '../catalog/catalog';
import { type Fault, within } from '../catalog/faults/fault';
import { readQuantity } from '../catalog/faults/quantities';
import type { KnownParameter } from '../catalog/known-parameter';
import type { BoardSetting, BoardText } from '../catalog/model/board-text';
import type { Board } from '../catalog/model/hardware';
import { staticWords } from '../craft/line-check';
import { countingFaults } from './counting-faults';
import { hardwareFaults } from './hardware-faults';
import { keyOf, openMember } from './profile';
import { compileTemplate, type Field, fill, match, type Template } from './template';

/** What is wrong with a board profile, in a catalogue that holds what the board adds to it. */
export function profileFaults(board: Board, catalog: Catalog): readonly Fault[] {
  return [...hardwareFaults(board, catalog), ...textHalfFaults(board, catalog)];
}

function textHalfFaults(board: Board, catalog: Catalog): readonly Fault[] {
  const { text, names } = board;
  const printed = printedFaults(board, catalog);
  if (text === undefined && names.length > 0)
    return [...printed, { at: ['names'], message: 'names need "text": how a line is written' }];
  if (text === undefined) return printed;
  return [
    ...printed,
    ...textFaults(text),
    ...nameFaults(board, text),
    ...names.flatMap(({ settings }, group) =>
      settings.flatMap((row, index) =>
        within(['names', group, 'settings', index], rowFaults(row, text, catalog)),
      ),
    ),
  ];
}

/** Its drawing shows motors by the words in which a script names them. */
function printedFaults({ motorsAsPrinted = [] }: Board, catalog: Catalog): readonly Fault[] {
  const known = catalog.parameters.get('motor.order');
  if (known === undefined) return [];
  const words = catalog.choices(known.parameter).map(({ name }) => name);
  return motorsAsPrinted.flatMap((name, index) =>
    words.includes(name)
      ? []
      : [
          {
            at: ['motorsAsPrinted', index],
            message: `${name} is no place of a motor; ${words.join(', ')} are`,
          },
        ],
  );
}

function textFaults(text: BoardText): readonly Fault[] {
  const one = (
    at: Fault['at'],
    source: string,
    needed: readonly Field[],
    allowed: readonly Field[],
  ): readonly Fault[] => {
    const made = compileTemplate(source, needed, allowed);
    return made.kind === 'fault' ? [{ at, message: made.message }] : [];
  };
  const pause = text.pace === undefined ? undefined : readQuantity(text.pace.pause, 'time').problem;
  return [
    ...one(['text', 'line'], text.line, ['name', 'value'], ['group', 'name', 'value', 'index']),
    ...(text.heading === undefined ? [] : one(['text', 'heading'], text.heading, ['group'], ['group'])),
    ...text.opening.flatMap((line, index) => one(['text', 'opening', index], line, [], ['board'])),
    ...text.closing.flatMap((line, index) => one(['text', 'closing', index], line, [], ['board', 'count'])),
    ...(pause === undefined ? [] : [{ at: ['text', 'pace', 'pause'], message: pause }]),
    ...(text.flags.on === text.flags.off
      ? [{ at: ['text', 'flags'], message: 'on and off are the same' }]
      : []),
  ];
}

/** Every name must come back from the line that it is written in, and none may stand there twice. */
function nameFaults({ names }: Board, text: BoardText): readonly Fault[] {
  const made = compileTemplate(text.line, ['name', 'value'], ['group', 'name', 'value', 'index']);
  if (made.kind === 'fault') return [];
  const seen = new Set<string>();
  return names.flatMap(({ group, settings }, groupIndex) =>
    settings.flatMap((row, rowIndex) =>
      row.names.flatMap((name, part): readonly Fault[] => {
        const at = ['names', groupIndex, 'settings', rowIndex, 'names', part];
        const key = keyOf(group, name);
        if (seen.has(key)) return [{ at, message: `${name} stands in ${group} twice` }];
        seen.add(key);
        return comesBack(made.template, text, group, name)
          ? []
          : [{ at, message: `${name} can’t be told apart from the rest of its line` }];
      }),
    ),
  );
}

function comesBack(line: Template, text: BoardText, group: string, name: string): boolean {
  const [inGroup, own] = [group, name].map((one) => one.replace(openMember, 'member'));
  const written = fill(line, { group: inGroup ?? '', name: own ?? '', value: '1', index: '1' });
  if (written.trim().startsWith(text.comment)) return false;
  const fields = match(line, written);
  return fields?.get('name')?.text === own && (fields?.get('group')?.text ?? inGroup) === inGroup;
}

const namesWanted: Readonly<Record<BoardSetting['by'], number | null>> = {
  value: 1,
  ends: 2,
  place: 2,
  cell: 1,
  samples: null,
  each: null,
};

const kindsFor: Readonly<Record<BoardSetting['by'], readonly string[]>> = {
  value: ['quantity', 'count', 'flag', 'word', 'words', 'text', 'date'],
  ends: ['range'],
  place: ['place'],
  cell: ['place'],
  samples: ['curve'],
  each: ['words'],
};

function rowFaults(row: BoardSetting, text: BoardText, catalog: Catalog): readonly Fault[] {
  const known = catalog.parameters.get(row.parameter);
  if (known === undefined) return [{ at: ['parameter'], message: `there is no parameter ${row.parameter}` }];
  const { kind } = known.parameter;
  const faults: Fault[] = [];
  const wanted = row.by === 'samples' ? (row.at?.length ?? 0) : namesWanted[row.by];
  if (!kindsFor[row.by].includes(kind))
    faults.push({ at: ['by'], message: `${row.parameter} is a ${kind}: "${row.by}" can’t write it` });
  if (wanted !== null && row.names.length !== wanted)
    faults.push({ at: ['names'], message: `"${row.by}" needs ${wanted} names here` });
  if (row.by === 'cell' && row.columns === undefined)
    faults.push({ at: ['by'], message: '"cell" needs "columns"' });
  const isOpen = row.parameter.includes('<') && !row.parameter.startsWith('pack.');
  const hasMember = row.names.every((name) => name.includes(openMember));
  if (isOpen !== hasMember && (isOpen || row.names.some((name) => name.includes(openMember))))
    faults.push({
      at: ['names'],
      message: isOpen ? `every name needs ${openMember}` : `${row.parameter} has no members`,
    });
  return [
    ...faults,
    ...countingFaults(row, known),
    ...wordFaults(row, known, catalog),
    ...listFaults(row, known, text, catalog),
    ...memberFaults(row, catalog),
  ];
}

/** Words of a list must be told apart: none may hold what stands between two of them, or be what an empty one is. */
function listFaults(
  row: BoardSetting,
  known: KnownParameter,
  { list }: BoardText,
  catalog: Catalog,
): readonly Fault[] {
  if (known.parameter.kind !== 'words' || row.by !== 'value') return [];
  const words = staticWords({ ...known, path: known.name, keys: [] }, catalog) ?? [];
  const wrong = words
    .map((word) => row.words?.[word] ?? word)
    .find((word) => word.includes(list.between) || word === list.none);
  if (wrong === undefined) return [];
  return [{ at: ['words'], message: `"${wrong}" can’t be told apart in a list of this board` }];
}

function wordFaults(row: BoardSetting, known: KnownParameter, catalog: Catalog): readonly Fault[] {
  if (row.words === undefined) return [];
  const { parameter } = known;
  const words =
    parameter.kind === 'flag'
      ? ['on', 'off']
      : parameter.kind === 'quantity' || parameter.kind === 'count'
        ? (parameter.orWords ?? []).map(({ name }) => name)
        : staticWords({ ...known, path: known.name, keys: [] }, catalog);
  const spelled = Object.values(row.words);
  const twice = spelled.find((word, index) => spelled.indexOf(word) !== index);
  return [
    ...(twice === undefined ? [] : [{ at: ['words'], message: `"${twice}" stands for two words` }]),
    ...Object.keys(row.words).flatMap((word) =>
      words === null || words.includes(word)
        ? []
        : [{ at: ['words', word], message: `"${word}" is no word of ${row.parameter}` }],
    ),
  ];
}

function memberFaults({ parameter, members }: BoardSetting, catalog: Catalog): readonly Fault[] {
  const collection = /^(.*?)\.<[a-z]+>/.exec(parameter)?.[1];
  if (members === undefined || collection === undefined) return [];
  const known = catalog.members(collection).map(({ name }) => name);
  if (known.length === 0) return [];
  return Object.keys(members).flatMap((member) => {
    const at = ['members', member];
    if (!known.includes(member))
      return [{ at, message: `"${member}" is none of ${collection}: ${known.join(', ')}` }];
    const path = parameter.replace(/<[a-z]+>/, member);
    return catalog.parameter(path) === undefined ? [{ at, message: `there is no parameter ${path}` }] : [];
  });
}
