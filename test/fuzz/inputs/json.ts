import fc from 'fast-check';

const odd: readonly unknown[] = [
  null,
  true,
  0,
  -1,
  1e21,
  '',
  'x',
  '__proto__',
  'constructor',
  '{name}',
  '{value}',
  '{member}',
  '{group}{group}',
  '[[a]]',
  '<name>',
  'own.x',
  'gyro.rate',
  'own.a > 1 Hz',
  '1 Hz',
  '-1e999 Hz',
  '9 parsec',
  '\u0000',
  '\u{1f6e0}',
  'a\nb',
  [],
  {},
  [[]],
  { '': '' },
];

/** A change at a place of a JSON value: by shares, so that it fits whatever value it meets. */
interface Change {
  readonly path: readonly number[];
  readonly kind: 'replace' | 'remove' | 'rename' | 'copy';
  readonly value: number;
}

const change: fc.Arbitrary<Change> = fc.record({
  path: fc.array(fc.double({ min: 0, max: 0.9999, noNaN: true }), { minLength: 1, maxLength: 7 }),
  kind: fc.constantFrom('replace', 'replace', 'replace', 'remove', 'rename', 'copy'),
  value: fc.nat(odd.length - 1),
});

/** JSON values of a right form with some places that are not. */
export function changedJson(values: readonly unknown[]): fc.Arbitrary<unknown> {
  return fc
    .tuple(fc.constantFrom(...values), fc.array(change, { maxLength: 3 }))
    .map(([value, changes]) => changes.reduce<unknown>((told, one) => changed(told, one, 0), value));
}

/** The value with the change made; follows the path as far as it leads. */
function changed(value: unknown, change: Change, depth: number): unknown {
  const share = change.path[depth];
  if (share === undefined || typeof value !== 'object' || value === null) return replaced(change);
  const entries: readonly (readonly [string, unknown])[] = Object.entries(value);
  const index = Math.floor(share * entries.length);
  const entry = entries[index];
  if (entry === undefined) return replaced(change);
  const [key, inner] = entry;
  const isLast = depth === change.path.length - 1;
  const made = isLast ? atEntry(key, inner, change) : [[key, changed(inner, change, depth + 1)] as const];
  const all = [...entries.slice(0, index), ...made, ...entries.slice(index + 1)];
  return Array.isArray(value) ? all.map(([, one]) => one) : Object.fromEntries(all);
}

function atEntry(key: string, inner: unknown, change: Change): readonly (readonly [string, unknown])[] {
  switch (change.kind) {
    case 'replace':
      return [[key, replaced(change)]];
    case 'remove':
      return [];
    case 'rename':
      return [[`${key}s`, inner]];
    case 'copy':
      return [
        [key, inner],
        [`${key} `, inner],
      ];
  }
}

function replaced({ value }: Change): unknown {
  return odd[value] ?? null;
}
