import fc from 'fast-check';
import { type Meaning, meaningsOf } from '../../server/src/board/meaning/meanings';
import { collectionOf, membersOf } from '../../server/src/board/profile/members';
import type { Profile } from '../../server/src/board/profile/profile';
import type { Catalog, FoundParameter } from '../../server/src/catalog/catalog';
import type { BoardProfile, Counts } from '../../server/src/catalog/model/board-profile';
import { staticWords } from '../../server/src/craft/line-check';
import type { Value } from '../../server/src/craft/value';
import { parseQuantity } from '../../server/src/units/quantity';

/** A meaning of a profile with the parameter, and member, that it stands for. */
export interface MeaningOnBoard {
  readonly meaning: Meaning;
  readonly found: FoundParameter;
  readonly member: string | null;
}

/** Every meaning of a board; one with members once for each of the first two. */
export function meaningsOn(profile: Profile, catalog: Catalog): readonly MeaningOnBoard[] {
  return meaningsOf(profile).flatMap((meaning) =>
    twoMembers(profile.board, meaning.means).flatMap((member) => {
      const found = catalog.parameter(meaning.means.replace(/<[a-z]+>/, member ?? 'captured'));
      return found === undefined ? [] : [{ meaning, found, member }];
    }),
  );
}

function twoMembers(board: BoardProfile, means: string): readonly (string | null)[] {
  const collection = collectionOf(means);
  if (collection === null || collection === 'pack') return [null];
  return [...(membersOf(board, means)?.keys() ?? ['1', '2'])].slice(0, 2);
}

/** Values that a parameter can hold on a board: within its range and the board's limits. */
export function valueOn({ meaning, found }: MeaningOnBoard, catalog: Catalog): fc.Arbitrary<Value> | null {
  const { parameter } = found;
  const { spelled, counts } = meaning.parts[0]?.setting ?? {};
  const words = spelled === undefined ? null : Object.keys(spelled);
  switch (parameter.kind) {
    case 'quantity':
      return within(counts, parameter.range).map((value) => ({
        kind: 'quantity',
        value,
        unit: parameter.unit,
      }));
    case 'count': {
      const [low = 0, high = 0] = counts?.limits?.map(Number) ?? parameter.range;
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
      const length = meaning.by === 'each' ? meaning.parts.length : undefined;
      const size =
        length === undefined ? { maxLength: parameter.most } : { minLength: length, maxLength: length };
      return fc.array(fc.constantFrom(...known), size).map((value) => ({ kind: 'words', value }));
    }
    case 'range':
      return fc
        .tuple(within(counts, parameter.range), within(counts, parameter.range))
        .map(([one, other]) => ({
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
    case 'bare':
      return null;
    case 'date':
      return fc.constant({ kind: 'date', value: '2026-05-14' });
    case 'curve':
      return fc
        .array(within(counts, parameter.up.range), { minLength: 2, maxLength: 2 })
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

function within(counts: Counts | undefined, range: readonly [string, string]): fc.Arbitrary<number> {
  const [min = 0, max = 0] = (counts?.limits ?? range).map((text) => parseQuantity(text)?.value ?? 0);
  return fc.double({ min, max, noNaN: true });
}
