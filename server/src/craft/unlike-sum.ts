import type { ExpressionNode, LineFix, Problem } from '../language/ast';
import { problem } from '../language/problem';
import { isPlain, sameDimension } from '../units/dimension';
import { dimensionPhrase } from '../units/dimension-names';
import type { Evaluated } from './value';

/** A part of a sum or of a comparison. */
interface SumPart {
  readonly node: ExpressionNode;
  readonly value: Evaluated;
}

/** What is wrong with a sum or a comparison whose parts are of different kinds; null: all are of one. */
export function unlikeSum(parts: readonly SumPart[]): Problem | null {
  const [first] = parts;
  if (first === undefined) return null;
  const odd = parts.find(({ value }) => !sameDimension(value.dimension, first.value.dimension));
  if (odd === undefined) return null;
  const bare = parts.filter(({ value }) => value.kind === 'bare');
  const [forgotten] = bare;
  const measured = parts.find(({ value }) => !isPlain(value.dimension));
  if (forgotten === undefined || measured === undefined) return unlike(odd, first, odd, []);
  return unlike(forgotten, measured, forgotten, unitsWritten(bare, measured.value));
}

function unlike(at: SumPart, left: SumPart, right: SumPart, fixes: readonly LineFix[]): Problem {
  return problem('line/unlike-sum', at.node, { left: phrase(left), right: phrase(right) }, fixes);
}

function phrase({ value }: SumPart): string {
  return value.kind === 'bare' ? 'a number without a unit' : dimensionPhrase(value.dimension);
}

/** The unit of the other side, written to every part that has none; nothing where that can't be done in place. */
function unitsWritten(parts: readonly SumPart[], { unit, kind }: Evaluated): readonly LineFix[] {
  // What is added to a temperature is a difference, what is compared with one is not.
  if (unit === null || kind === 'on-scale') return [];
  const edits = parts.flatMap(({ node }) => {
    const newText = withUnit(node, unit);
    return newText === null ? [] : [{ start: node.start, end: node.end, newText }];
  });
  if (edits.length < parts.length) return [];
  return [{ title: `Write ${edits.map(({ newText }) => newText).join(' and ')}`, edits }];
}

/** `2 * 90` in Hz is `2 * 90 Hz`, and a name is `name * 1 Hz`. null: no number or name, nor a product of such. */
function withUnit(node: ExpressionNode, unit: string): string | null {
  const factors = node.kind === 'product' ? node.factors : [{ sign: '*' as const, node }];
  const last = factors.findLast((factor) => factor.sign === '*' && factor.node.kind === 'number');
  const texts = factors.map((factor, index) => {
    const text = textOf(factor.node);
    const before = index === 0 ? '' : ` ${factor.sign} `;
    return text === null ? null : `${before}${text}${factor === last ? ` ${unit}` : ''}`;
  });
  if (texts.includes(null)) return null;
  return `${texts.join('')}${last === undefined ? ` * 1 ${unit}` : ''}`;
}

function textOf(node: ExpressionNode): string | null {
  if (node.kind === 'number') return node.digits;
  return node.kind === 'reference' ? node.path.text : null;
}
