import assert from 'node:assert/strict';
import type { Conversion, Ground, TakenAs } from '../../server/src/board/learn/convert/taken';
import { type LearnedSetting, learnedSettings } from '../../server/src/board/learn/learned-settings';
import { readListing } from '../../server/src/board/listing/read-listing';
import { countingOf, inBoard } from '../../server/src/board/meaning/counting';
import type { FoundParameter } from '../../server/src/catalog/catalog';
import type { Counts } from '../../server/src/catalog/model/board-profile';
import { testCatalog } from './catalog';

export const ground: Ground = {
  catalog: testCatalog,
  manner: { flags: { on: 'on', off: 'off' }, list: { between: ',', none: '-' }, decimal: '.', quote: '' },
};

/** Every quantity and every range of the catalogue, at a path of its own. */
export const quantities: readonly FoundParameter[] = [...testCatalog.parameters.values()].flatMap((known) => {
  const members = { situation: 'high-throttle', function: 'arm', element: 'altitude', number: '1' };
  const path = known.name.replace(
    /<([a-z]+)>/g,
    (_, open: string) => new Map(Object.entries(members)).get(open) ?? 'one',
  );
  const found = testCatalog.parameter(path);
  return found !== undefined && ['quantity', 'range'].includes(known.parameter.kind) ? [found] : [];
});

const empty = readListing('', null);

/** A setting as a listing without a word beside its values shows it. */
export function listed(name: string, value: string): LearnedSetting {
  const nowhere = { start: 0, end: 0 };
  const style = { kind: 'plain' } as const;
  const setting = {
    groups: [],
    name,
    occurrence: 1,
    value,
    style,
    at: { name: nowhere, value: nowhere },
    stated: null,
  };
  const [learned] = learnedSettings({ ...empty, settings: [setting] });
  assert.ok(learned);
  return learned;
}

/** A number, or the lower end of a range. */
export function takenFor(found: FoundParameter, value: string): TakenAs {
  const as = found.parameter.kind === 'range' ? { as: 'low' as const } : {};
  return { setting: listed('x', value), means: found.path, ...as };
}

/** The same with what stands beside it. */
export function withStated(
  setting: LearnedSetting,
  stated: Partial<NonNullable<LearnedSetting['stated']>>,
): LearnedSetting {
  const nothing = {
    range: null,
    words: null,
    default: null,
    unit: null,
    remark: null,
    at: { start: 0, end: 0 },
  };
  return { ...setting, stated: { ...nothing, ...stated } };
}

export function boardsNumber(base: number, counts: Counts | undefined, found: FoundParameter): string {
  return String(Number(inBoard(countingOf(counts, found.parameter), base).toPrecision(9)));
}

export function asCounted({ meant }: Pick<Conversion, 'meant'>, found: FoundParameter): string | null {
  if (meant === null) return null;
  return [1, 2].map((number) => boardsNumber(number, meant.counts, found)).join(' ');
}
