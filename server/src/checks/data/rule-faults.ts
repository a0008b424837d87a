import type { Catalog } from '../../catalog/catalog';
import { type Fault, faultsWithin } from '../../catalog/faults/fault';
import type { KnownParameter } from '../../catalog/known-parameter';
import type { BenchStep } from '../../catalog/model/bench-card';
import type { DataCheck } from '../../catalog/model/check';
import type { CheckFix } from '../../catalog/model/fix';
import { evaluate } from '../../craft/evaluate';
import type { NameResult, Scope } from '../../craft/scope';
import type { Evaluated } from '../../craft/value';
import { figureUnit } from '../../figures';
import type { ExpressionNode, Problem } from '../../language/ast';
import { isOwnPath } from '../../language/path-text';
import { referencesIn } from '../../language/value-nodes';
import { type Dimension, plain, sameDimension } from '../../units/dimension';
import { dimensionPhrase, findDimensionName } from '../../units/dimension-names';
import { isOnScale, parseUnit } from '../../units/unit';
import { type Condition, readCondition, readExpressionText } from './condition';
import { calculatedSlot, filledTemplate, settlingSlot, slotsIn, whereSlot, wordSlot } from './data-template';
import { asMember, memberSlot, type PerMember } from './members';
import { offeredOf } from './offers';

/** What is wrong with a rule that is written as data: what can't be read, and names that there are not. */
export function ruleFaults(check: DataCheck, catalog: Catalog): readonly Fault[] {
  const unknown = collectionFaults(check, catalog);
  if (unknown.length > 0) return unknown;
  const names = new RuleNames(check, catalog);
  const { related = [], fixes = [] } = check;
  return [
    ...check.when.flatMap((text, index) => faultsWithin(['when', index], names.condition(text))),
    ...faultsWithin(['at'], names.place(check.at)),
    ...faultsWithin(['message'], names.template(check.message)),
    ...faultsWithin(['advice'], names.template(check.advice)),
    ...related.flatMap(({ at, message }, index) => [
      ...faultsWithin(['related', index, 'at'], names.place(at)),
      ...faultsWithin(['related', index, 'message'], names.template(message)),
    ]),
    ...fixes.flatMap((fix, index) => faultsWithin(['fixes', index], names.fix(fix))),
  ];
}

/** What is wrong with a step of the bench card: it is written as rules are. */
export function stepFaults(step: BenchStep, catalog: Catalog): readonly Fault[] {
  const unknown = collectionFaults(step, catalog);
  if (unknown.length > 0) return unknown;
  const names = new RuleNames(step, catalog);
  const { expected = [], readings = [], any = [], asks = [], elsewhere = {} } = step;
  return [
    ...step.when.flatMap((text, index) => faultsWithin(['when', index], names.condition(text))),
    ...any.flatMap((text, index) => faultsWithin(['any', index], names.condition(text))),
    ...asks.flatMap((path, index) => faultsWithin(['asks', index], names.template(`{${path}}`))),
    ...Object.entries(elsewhere).flatMap(([member, path]) =>
      faultsWithin(['elsewhere', member], names.template(`{${path}}`)),
    ),
    ...(['title', 'do', 'see', 'eachPack'] as const).flatMap((part) =>
      faultsWithin([part], names.template(step[part] ?? '')),
    ),
    ...expected.flatMap(({ is }, index) =>
      faultsWithin(['expected', index, 'is'], names.template(`{${is}}`)),
    ),
    ...readings.flatMap(({ words, unit, setting, each }, index) => [
      ...faultsWithin(['readings', index], readingFaults(words, each, step, catalog)),
      ...(unit === '' || parseUnit(unit).unit !== undefined
        ? []
        : [{ at: ['readings', index, 'unit'], message: `there is no unit ${unit}` }]),
      ...(setting === undefined || catalog.parameter(`flight.any.${setting}`) !== undefined
        ? []
        : [{ at: ['readings', index, 'setting'], message: `a flight has no ${setting}` }]),
    ]),
  ];
}

function readingFaults(
  words: string,
  each: string | undefined,
  step: BenchStep,
  catalog: Catalog,
): readonly Fault[] {
  const about = each === undefined ? step : { each };
  const unknown = collectionFaults(about, catalog);
  return unknown.length > 0
    ? unknown
    : faultsWithin(['words'], new RuleNames(about, catalog).template(words));
}

function collectionFaults({ each }: PerMember, catalog: Catalog): readonly Fault[] {
  if (each === undefined || catalog.collection(each) !== undefined) return [];
  return [{ at: ['each'], message: `${each} is no collection` }];
}

/** Faults of the parts of one rule, as parts of their own. */
class RuleNames {
  constructor(
    private readonly check: PerMember,
    private readonly catalog: Catalog,
  ) {}

  place(text: string): readonly Fault[] {
    const path = asMember(text, this.check, this.catalog);
    if (isOwnPath(path)) return fault(noRule(path));
    const isKnown = this.catalog.parameter(path) !== undefined || this.catalog.isSection(path);
    return isKnown ? [] : fault(`there is no ${text}`);
  }

  condition(text: string): readonly Fault[] {
    return contained(() => {
      const condition = readCondition(asMember(text, this.check, this.catalog));
      return condition.kind === 'compare' ? this.comparison(condition) : this.worded(condition);
    });
  }

  template(text: string): readonly Fault[] {
    return slotsIn(text).flatMap((slot) => contained(() => this.slot(slot)));
  }

  fix(fix: CheckFix): readonly Fault[] {
    const { when = [], title } = fix;
    const own = [
      ...when.flatMap((text, index) => faultsWithin(['when', index], this.condition(text))),
      ...faultsWithin(['title'], this.template(title.replaceAll('{to}', ''))),
    ];
    if ('remove' in fix)
      return [
        ...own,
        ...fix.remove.flatMap((path, index) => faultsWithin(['remove', index], this.place(path))),
      ];
    return [
      ...own,
      ...this.line(fix),
      ...(fix.also ?? []).flatMap((line, index) => faultsWithin(['also', index], this.line(line))),
    ];
  }

  private line({ set, to }: { readonly set: string; readonly to: string }): readonly Fault[] {
    return [...faultsWithin(['set'], this.place(set)), ...faultsWithin(['to'], this.template(to))];
  }

  private slot(slot: string): readonly Fault[] {
    const offer = offeredOf(slot);
    if (offer !== null)
      return offer.list === null ? [] : this.name(asMember(offer.list, this.check, this.catalog));
    if (slot === memberSlot) {
      return this.check.each === undefined
        ? fault('{member} needs a collection to take in turn: "each"')
        : [];
    }
    const text = asMember(slot, this.check, this.catalog);
    if (wordSlot.test(text)) return this.condition(text);
    const [, placed] = whereSlot.exec(text) ?? settlingSlot.exec(text) ?? [];
    if (placed !== undefined) return this.name(`figure.${placed}`);
    const calculated = calculatedSlot(text);
    if (calculated === null) return this.name(text);
    const { expression, unit: unitText } = calculated;
    const { unit } = parseUnit(unitText);
    if (unit === undefined) return fault(`"${unitText}" is not a unit`);
    const read = this.expression(readExpressionText(expression));
    if (!('dimension' in read)) return read;
    return read.dimension === null || sameDimension(read.dimension, unit.dimension)
      ? []
      : fault(`${expression} is ${dimensionPhrase(read.dimension)}, and is not told in ${unitText}`);
  }

  private name(path: string): readonly Fault[] {
    if (path.startsWith('figure.'))
      return figureUnit(path.slice(7)) !== undefined ? [] : fault(`there is no figure ${path.slice(7)}`);
    const refused = this.refused(path);
    return refused === null ? [] : fault(refused);
  }

  /** Why a rule can't read a parameter; null where it can. */
  private refused(path: string): string | null {
    if (isOwnPath(path)) return noRule(path);
    return this.catalog.parameter(path) === undefined ? `there is no parameter ${path}` : null;
  }

  private worded(condition: Exclude<Condition, { kind: 'compare' }>): readonly Fault[] {
    const found = this.catalog.parameter(condition.path);
    const refused = this.refused(condition.path);
    if (found === undefined || refused !== null) return fault(refused ?? '');
    if (condition.kind === 'set') return [];
    const isList = found.parameter.kind === 'words';
    if (isList !== (condition.kind === 'has'))
      return fault(`${condition.path} ${isList ? 'is a list: write "has"' : 'is no list: write "is"'}`);
    const words = wordsOf(found, this.catalog);
    if (words === null || words.includes(condition.word)) return [];
    const taken = words.length === 0 ? 'none' : words.join(', ');
    return fault(`${condition.path} never is ${condition.word}; its words: ${taken}`);
  }

  private comparison({ left, right }: Extract<Condition, { kind: 'compare' }>): readonly Fault[] {
    const [one, other] = [this.expression(left), this.expression(right)];
    if (!('dimension' in one)) return one;
    if (!('dimension' in other)) return other;
    if (one.dimension === null || other.dimension === null) return [];
    if (sameDimension(one.dimension, other.dimension)) return [];
    return fault(`${dimensionPhrase(one.dimension)} is compared with ${dimensionPhrase(other.dimension)}`);
  }

  private expression(node: ExpressionNode): readonly Fault[] | { readonly dimension: Dimension | null } {
    const unknown = [...referencesIn(node)].flatMap(({ path: { text } }) => this.operand(text));
    if (unknown.length > 0) return unknown;
    const { value, problem } = evaluate(node, probe(this.catalog));
    // With other values it may well be finite.
    const isByChance = problem === null || byChance.includes(problem.id);
    if (!isByChance) return fault(this.sentence(problem));
    return { dimension: value?.dimension ?? null };
  }

  private operand(path: string): readonly Fault[] {
    if (!path.includes('.')) return fault(`${path} is no parameter; a rule has no constants`);
    if (path.startsWith('figure.')) return this.name(path);
    const refused = this.refused(path);
    if (refused !== null) return fault(refused);
    const kind = this.catalog.parameter(path)?.parameter.kind;
    return kind === 'quantity' || kind === 'count' ? [] : fault(`${path} holds no single number`);
  }

  private sentence({ id, values }: Problem): string {
    return filledTemplate(this.catalog.check(id)?.message ?? id, values).replace(/\.$/, '');
  }
}

function noRule(path: string): string {
  return `${path} is kept as the board writes it, and no rule can read it`;
}

const byChance = ['line/divided-by-zero', 'line/no-finite-value'];

function fault(message: string): readonly Fault[] {
  return [{ at: [], message }];
}

function contained(read: () => readonly Fault[]): readonly Fault[] {
  try {
    return read();
  } catch (error) {
    return fault(error instanceof Error ? error.message : String(error));
  }
}

/** The words that a parameter can be; null where only the craft can tell. */
export function wordsOf({ parameter }: KnownParameter, catalog: Catalog): readonly string[] | null {
  if (parameter.kind === 'flag') return ['on', 'off'];
  const isFromCraft =
    'choicesFrom' in parameter && (parameter.choicesFrom === 'ports' || parameter.choicesFrom === 'packs');
  if (isFromCraft || ('permutationOf' in parameter && parameter.permutationOf !== undefined)) return null;
  return catalog.choices(parameter).map(({ name }) => name);
}

/** Every number is some number: only what it measures counts. */
function probe(catalog: Catalog): Scope {
  return {
    constant: () => ({ kind: 'missing', near: () => [] }),
    parameter: (path): NameResult => {
      return { kind: 'value', value: { ...measuredBy(path, catalog), value: 1, unit: null } };
    },
  };
}

function measuredBy(path: string, catalog: Catalog): Pick<Evaluated, 'dimension' | 'kind'> {
  if (path.startsWith('figure.')) {
    const { unit } = parseUnit(figureUnit(path.slice(7)) ?? '');
    const isTemperature = unit !== undefined && isOnScale(unit);
    return { dimension: unit?.dimension ?? plain, kind: isTemperature ? 'on-scale' : 'quantity' };
  }
  const name = findDimensionName(catalog.parameter(path)?.dimensionName ?? '');
  return { dimension: name?.dimension ?? plain, kind: name?.isScale === true ? 'on-scale' : 'quantity' };
}
