import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { craftOf } from '../../support/findings';
import { target } from '../target';

/** An expression with what it comes to by plain arithmetic. */
interface Written {
  readonly text: string;
  /** null: it has no value, such as a division by zero. */
  readonly value: number | null;
}

const number = fc
  .oneof(
    fc.nat(2000),
    fc.nat(2000).map((thousandths) => thousandths / 1000),
  )
  .map((value): Written => ({ text: String(value), value }));

/** Sums, products, calls and parentheses, as deep as a pilot may nest them. */
const { expression } = fc.letrec<{ expression: Written; atom: Written; product: Written }>((tie) => ({
  atom: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    { weight: 4, arbitrary: number },
    { weight: 1, arbitrary: tie('expression').map(({ text, value }) => ({ text: `(${text})`, value })) },
    {
      weight: 1,
      arbitrary: fc
        .tuple(
          fc.constantFrom('min', 'max'),
          fc.array(tie('expression'), { minLength: 1, maxLength: 3, depthIdentifier: 'arguments' }),
        )
        .map(([name, told]) => called(name, told)),
    },
    {
      weight: 1,
      arbitrary: tie('expression').map(({ text, value }) => ({
        text: `abs(${text})`,
        value: value === null ? null : Math.abs(value),
      })),
    },
  ),
  product: fc
    .tuple(
      tie('atom'),
      fc.array(fc.tuple(fc.constantFrom('*', ' * ', '/', ' / '), tie('atom')), {
        maxLength: 2,
        depthIdentifier: 'factors',
      }),
    )
    .map(([first, more]) => more.reduce(joined, first)),
  expression: fc
    .tuple(
      tie('product'),
      fc.array(fc.tuple(fc.constantFrom(' + ', ' - '), tie('product')), {
        maxLength: 2,
        depthIdentifier: 'terms',
      }),
    )
    .map(([first, more]) => more.reduce(joined, first)),
}));

function called(name: string, told: readonly Written[]): Written {
  const values = told.map(({ value }) => value);
  const known = values.filter((value) => value !== null);
  const isKnown = known.length === values.length;
  const value = name === 'min' ? Math.min(...known) : Math.max(...known);
  return { text: `${name}(${told.map(({ text }) => text).join(', ')})`, value: isKnown ? value : null };
}

function joined(one: Written, [sign, other]: readonly [string, Written]): Written {
  const text = one.text + sign + other.text;
  if (one.value === null || other.value === null) return { text, value: null };
  switch (sign.trim()) {
    case '+':
      return { text, value: one.value + other.value };
    case '-':
      return { text, value: one.value - other.value };
    case '*':
      return { text, value: one.value * other.value };
    default:
      return { text, value: other.value === 0 ? null : one.value / other.value };
  }
}

/** Parentheses nest to this depth; deeper ones are refused with a finding. */
const deepest = 12;

function depthOf(text: string): number {
  let [depth, most] = [0, 0];
  for (const character of text) {
    if (character === '(') depth += 1;
    if (character === ')') depth -= 1;
    most = Math.max(most, depth);
  }
  return most;
}

/** Arithmetic of scripts held against plain arithmetic. */
export const expressions = target<Written>(
  { name: 'expressions', share: 118, holds: 'an expression comes to what plain arithmetic says' },
  expression,
  ({ text, value }) => {
    if (depthOf(text) > deepest) return;
    const craft = craftOf(`let x = ${text}\n`);
    const found = craft.constant('x', null);
    const got = found.kind === 'value' ? found.value.value : null;
    if (value === null || !Number.isFinite(value)) return assert.equal(got, null, text);
    assert.ok(got !== null, `${text} has no value`);
    assert.ok(Math.abs(got - value) <= 1e-9 * Math.max(1, Math.abs(value)), `${text}: ${got}, not ${value}`);
  },
);
