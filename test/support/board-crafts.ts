import fc from 'fast-check';
import type { Catalog, FoundParameter } from '../../server/src/catalog/catalog';
import type { BoardSetting } from '../../server/src/catalog/model/board-text';
import type { Board } from '../../server/src/catalog/model/hardware';
import { staticWords } from '../../server/src/craft/line-check';
import type { Value } from '../../server/src/craft/value';
import { parseQuantity } from '../../server/src/units/quantity';

/** A row of a profile with the parameter, and member, that it stands for. */
export interface RowOfBoard {
  readonly group: string;
  readonly row: BoardSetting;
  readonly found: FoundParameter;
  readonly member: string | null;
}

/** Every row of a board; one with members once for each of the first two. */
export function rowsOf(board: Board, catalog: Catalog): readonly RowOfBoard[] {
  return board.names.flatMap(({ group, settings }) =>
    settings.flatMap((row) =>
      membersOf(row).flatMap((member) => {
        const found = catalog.parameter(row.parameter.replace(/<[a-z]+>/, member ?? 'captured'));
        return found === undefined ? [] : [{ group, row, found, member }];
      }),
    ),
  );
}

function membersOf(row: BoardSetting): readonly (string | null)[] {
  if (!row.parameter.includes('<') || row.parameter.startsWith('pack.')) return [null];
  return row.members === undefined ? ['1', '2'] : Object.keys(row.members).slice(0, 2);
}

/** Values that a parameter can hold on a board: within its range and the board's limits. */
export function valueOn({ row, found }: RowOfBoard, catalog: Catalog): fc.Arbitrary<Value> | null {
  const { parameter } = found;
  const words = row.words === undefined ? null : Object.keys(row.words);
  switch (parameter.kind) {
    case 'quantity':
      return within(row, parameter.range).map((value) => ({ kind: 'quantity', value, unit: parameter.unit }));
    case 'count': {
      const [low = 0, high = 0] = row.limits?.map(Number) ?? parameter.range;
      return fc.integer({ min: low, max: high }).map((value) => ({ kind: 'count', value }));
    }
    case 'flag':
      return fc.boolean().map((value) => ({ kind: 'flag', value }));
    case 'word': {
      const known = words ?? staticWords(found, catalog) ?? ['uart1', 'uart2'];
      const free = parameter.permutationOf === undefined ? known : [parameter.permutationOf];
      return free.length === 0 ? null : fc.constantFrom(...free).map((value) => ({ kind: 'word', value }));
    }
    case 'words': {
      const known = words ?? staticWords(found, catalog) ?? [];
      if (known.length === 0) return null;
      const length = row.by === 'each' ? row.names.length : undefined;
      const size =
        length === undefined ? { maxLength: parameter.most } : { minLength: length, maxLength: length };
      return fc.array(fc.constantFrom(...known), size).map((value) => ({ kind: 'words', value }));
    }
    case 'range':
      return fc.tuple(within(row, parameter.range), within(row, parameter.range)).map(([one, other]) => ({
        kind: 'range',
        low: Math.min(one, other),
        high: Math.max(one, other),
        unit: parameter.unit,
      }));
    case 'place':
      return fc
        .tuple(fc.nat({ max: 12 }), fc.nat({ max: 29 }))
        .map(([line, column]) => ({ kind: 'place', row: line, column }));
    case 'text':
      return fc
        .stringMatching(/^[A-Za-z"'][A-Za-z "',;-]{0,10}[a-z"']$/)
        .map((value) => ({ kind: 'text', value }));
    case 'date':
      return fc.constant({ kind: 'date', value: '2026-05-14' });
    case 'curve':
      return fc
        .array(within(row, parameter.up.range), { minLength: 2, maxLength: 2 })
        .map((ys) => [...ys].sort((one, other) => one - other))
        .map(([low = 0, high = 0]) => ({
          kind: 'curve',
          points: [
            { x: 0, y: low },
            { x: 1, y: high },
          ],
        }));
  }
}

function within(row: BoardSetting, range: readonly [string, string]): fc.Arbitrary<number> {
  const [min = 0, max = 0] = (row.limits ?? range).map((text) => parseQuantity(text)?.value ?? 0);
  return fc.double({ min, max, noNaN: true });
}
