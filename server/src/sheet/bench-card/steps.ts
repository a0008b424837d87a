import type { BenchStep } from '../../catalog/model/bench-card';
import { holds, readCondition } from '../../checks/data/condition';
import { dataScope } from '../../checks/data/data-scope';
import { slotsIn } from '../../checks/data/data-template';
import { namingMember, placeholderOf } from '../../checks/data/members';
import type { Craft } from '../../craft/craft';
import { CraftView } from '../../craft/view';
import { type Target, targetOfPath } from '../target';
import { askedOf } from './asked';
import type { CardReading, CardStep, WithPack } from './card';
import { figuresFor, unknownOf } from './expected';
import { differsIn, filledFor, type StepMember, type StepView } from './step-words';

export interface PlacedStep {
  readonly stage: BenchStep['stage'];
  readonly step: CardStep;
}

/** The steps that a craft needs with any of these packs. What differs between them stands in one step, and no step twice. */
export function cardSteps(craft: Craft, packs: readonly string[]): readonly PlacedStep[] {
  const asked = lookedAt(craft, packs);
  const told = new Set<string>();
  return craft.catalog.benchSteps.flatMap((step) => {
    const placeholder = placeholderOf(step, craft.catalog);
    return membersOf(step.each, asked).flatMap((member) => {
      const about = { member, placeholder };
      const here = asked.filter((one) => isNeeded(step, one, about));
      if (here.length === 0) return [];
      const needed = here.flatMap(({ view }) => view.variant ?? []);
      const made = cardStep(craft, step, about, { packs, needed, told });
      return made === null ? [] : [{ stage: step.stage, step: made }];
    });
  });
}

/** One view for each pack; a craft without one is looked at by itself. */
function lookedAt(craft: Craft, packs: readonly string[]): readonly StepView[] {
  return (packs.length === 0 ? [null] : packs).map((pack) => {
    const view = new CraftView(craft, pack);
    return { view, scope: dataScope(view) };
  });
}

/** In the order of the catalogue, where it has one. A step that is about no collection has one nameless member. */
function membersOf(collection: string | undefined, asked: readonly StepView[]): readonly string[] {
  const [first] = asked;
  if (collection === undefined || first === undefined) return [''];
  const found = [...new Set(asked.flatMap(({ view }) => view.members(collection)))];
  const known = first.view.catalog.members(collection).map(({ name }) => name);
  return [...known.filter((name) => found.includes(name)), ...found.filter((name) => !known.includes(name))];
}

function isNeeded(
  { when, any = [], asks = [], elsewhere = {} }: BenchStep,
  { view, scope }: StepView,
  { placeholder, member }: StepMember,
): boolean {
  const isTrue = (text: string) => holds(readCondition(namingMember(text, placeholder, member)), view, scope);
  const other = Object.hasOwn(elsewhere, member) ? elsewhere[member] : undefined;
  if (other !== undefined && view.isSet(other)) return false;
  const isAsked = asks.length === 0 || view.craft.isWhole() || asks.some((path) => view.isSet(path));
  return isAsked && when.every(isTrue) && (any.length === 0 || any.some(isTrue));
}

interface ForPacks {
  readonly packs: readonly string[];
  /** Those that need the step. */
  readonly needed: readonly string[];
  /** What earlier steps asked for, and why they did not know something. */
  readonly told: Set<string>;
}

/** Null where a line that it is about can't be read: that line must be mended first, and says so itself. */
function cardStep(
  craft: Craft,
  step: BenchStep,
  about: StepMember,
  { packs, needed, told }: ForPacks,
): CardStep | null {
  const looked = lookedAt(craft, needed); // views of its own, so that what they assume is this step's alone
  const id = about.member === '' ? step.id : `${step.id} ${about.member}`;
  const fill = (text: string) => filledFor(text, looked, about);
  const isOfSome = needed.length < packs.length;
  const isWithEach = step.eachPack !== undefined && needed.length > 1;
  const expected = (step.expected ?? []).map((one) => figuresFor(looked, one));
  const differs =
    isWithEach ||
    isOfSome ||
    expected.some(({ isSame }) => !isSame) ||
    [step.title, step.do, step.see].some((text) => differsIn(text, looked, about));
  const room = (pack: string | null) => roomOf(step, looked, about, id, pack);
  const isSplit = needed.length > 0 && packs.length > 1 && differs;
  const made: CardStep = {
    id,
    title: fill(step.title),
    only: isOfSome ? needed : null,
    do: isWithEach ? `${fill(step.do)} ${fill(step.eachPack ?? '')}` : fill(step.do),
    see: fill(step.see),
    expected: expected.flatMap(({ isSame, figures }) => (isSame || !isSplit ? (figures[0] ?? []) : [])),
    readings: isSplit ? [] : room(null),
    withPacks: isSplit
      ? needed
          .map(
            (pack, index): WithPack => ({
              pack,
              expected: expected.flatMap(({ isSame, figures }) => (isSame ? [] : (figures[index] ?? []))),
              readings: room(pack),
            }),
          )
          .filter((one) => one.expected.length > 0 || one.readings.length > 0)
      : [],
    asked: askedOf(step, looked, id, told),
    unknown: unknownOf(craft, looked, step.expected ?? [], told),
    assumed: [...new Set(looked.flatMap(({ view }) => view.assumedInWords))],
    source: step.source.text === 'common practice' ? null : step.source.text,
    target: targetFor(step, looked, about),
  };
  return looked.some(({ view }) => view.unreadable.length > 0) ? null : made;
}

/** Room to write what is read off, once or with a pack. */
function roomOf(
  { readings = [] }: BenchStep,
  looked: readonly StepView[],
  about: StepMember,
  id: string,
  pack: string | null,
): readonly CardReading[] {
  const rows = readings.flatMap(({ each, ...reading }) => {
    const [first] = looked;
    if (each === undefined || first === undefined) return [{ ...reading, about }];
    const placeholder = placeholderOf({ each }, first.view.catalog);
    return membersOf(each, looked).map((member) => ({ ...reading, about: { member, placeholder } }));
  });
  const seenBy = pack === null ? looked : looked.filter(({ view }) => view.variant === pack);
  return rows.map((row, index) => ({
    id: `${id} ${index + 1}${pack === null ? '' : ` ${pack}`}`,
    words: filledFor(row.words, seenBy, row.about),
    unit: row.unit,
    isWords: row.isWords === true,
    setting: row.setting ?? null,
    script: null,
  }));
}

/** The first setting that the step speaks of and that a line sets. */
function targetFor(
  step: BenchStep,
  [first]: readonly StepView[],
  { placeholder, member }: StepMember,
): Target | null {
  if (first === undefined) return null;
  const slots = slotsIn(`${step.see} ${step.do} ${step.title}`);
  const conditions = step.when.map((text) => text.split(' ')[0] ?? '');
  for (const slot of [...slots, ...conditions]) {
    const target = targetOfPath(first.view, namingMember(slot, placeholder, member));
    if (target !== null) return target;
  }
  return null;
}
