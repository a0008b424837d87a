import type { BenchStep } from '../../catalog/model/bench-card';
import { replacementText } from '../../catalog/replacements';
import { holds, readCondition } from '../../checks/data/condition';
import { dataScope } from '../../checks/data/data-scope';
import { slotsIn, slotText } from '../../checks/data/data-template';
import { memberSlot, namingMember, placeholderOf } from '../../checks/data/members';
import type { Finding } from '../../checks/report/finding';
import { adviceOf, messageOf, sentenceOf } from '../../checks/report/render';
import type { Craft } from '../../craft/craft';
import { fileName } from '../../craft/include-path';
import { notLookedAt } from '../../craft/read-as';
import type { Scope } from '../../craft/scope';
import { CraftView } from '../../craft/view';
import { figureOf } from '../../figures';
import { exactText } from '../../units/quantity';
import { jobStages } from '../job-stages';
import { type Target, targetOfPath } from '../target';
import { figureText, intervalText } from '../which-pack';

/** What is done on the bench to prove a craft, step by step, as plain data. */
export interface BenchCard {
  readonly name: string;
  readonly about: readonly string[];
  readonly pack: string | null;
  readonly cautions: readonly string[];
  /** How the card is to be read. */
  readonly note: string;
  /** What was not checked, since the script is no whole craft; null: all was. */
  readonly unchecked: string | null;
  /** What must be mended before anything is connected. */
  readonly first: readonly { readonly message: string; readonly advice: string }[];
  /** Risks that the pilot accepted, with the reason. */
  readonly accepted: readonly { readonly message: string; readonly reason: string }[];
  /** What files of the workspace have in place of what is built in, a sentence each. */
  readonly replaced: readonly string[];
  readonly parts: readonly CardPart[];
}

export interface CardPart {
  readonly stage: BenchStep['stage'];
  readonly title: string;
  readonly steps: readonly CardStep[];
}

export interface CardStep {
  /** Unique on the card. */
  readonly id: string;
  readonly title: string;
  readonly do: string;
  readonly see: string;
  readonly expected: readonly CardFigure[];
  readonly readings: readonly CardReading[];
  /** Settings of which the script says nothing, with what then holds: "esc.lost-answers 1 %". */
  readonly assumed: readonly string[];
  /** Where the step comes from; null: common practice. */
  readonly source: string | null;
  /** The line that the step proves. */
  readonly target: Target | null;
}

export interface CardFigure {
  readonly words: string;
  readonly text: string;
  /** From low to high. */
  readonly span: string | null;
}

export interface CardReading {
  /** Unique on the card. */
  readonly id: string;
  readonly words: string;
  readonly unit: string;
  /** The setting of a flight that keeps it; null: it goes into the flight's note. */
  readonly setting: string | null;
}

const parts: readonly (readonly [stage: BenchStep['stage'], title: string])[] = [
  ...jobStages,
  ['hover', 'With propellers, outdoors'],
];

const cautions: readonly string[] = [
  'Propellers off for every step with a pack connected, up to the last part.',
  'Lithium packs can burn: never unattended, never below the cell limit.',
  'Transmit power and channels: local radio rules and your licence decide.',
  'Flight: local aviation and club rules decide; a pilot in goggles often needs an observer.',
  'Figures are estimates from the script. This card tests a build; it does not clear it for flight.',
];

const note =
  '“On the board” means wherever your board shows its readings: its set-up view, the overlay, or the transmitter’s screen. Steps are common practice where they name no source.';

/** The card of a craft with a pack: only the steps that it needs. */
export function benchCard(craft: Craft, findings: readonly Finding[], pack: string | null): BenchCard {
  const view = new CraftView(craft, pack);
  const steps = craft.catalog.benchSteps.flatMap((step) => stepsOf(step, view));
  const open = findings.filter(({ level, accepted }) => level === 'must-fix' && accepted === null);
  return {
    name: view.text('craft.name') ?? onOneLine(fileName(craft.root.uri)),
    about: [
      view.board === undefined ? undefined : view.boardTitle,
      pack === null ? undefined : `pack ${pack}`,
    ].flatMap((word) => word ?? []),
    pack,
    cautions,
    note,
    unchecked: notLookedAt(craft.readAs()),
    first: open.map((finding) => ({ message: messageOf(finding), advice: adviceOf(finding) })),
    accepted: findings.flatMap((finding) =>
      finding.accepted === null ? [] : [{ message: messageOf(finding), reason: finding.accepted }],
    ),
    replaced: craft.catalog.replacements.map(replacementText),
    parts: parts.flatMap(([stage, title]) => {
      const own = steps.filter((step) => step.stage === stage).map(({ step }) => step);
      return own.length === 0 ? [] : [{ stage, title, steps: own }];
    }),
  };
}

/** A file may be named with line ends, which would begin a line of the card. */
function onOneLine(name: string): string {
  return name.replace(/[\r\n\u2028\u2029]/g, '\ufffd');
}

interface Placed {
  readonly stage: BenchStep['stage'];
  readonly step: CardStep;
}

function stepsOf(step: BenchStep, view: CraftView): readonly Placed[] {
  const placeholder = placeholderOf(step, view.catalog);
  const scope = dataScope(view);
  const members = step.each === undefined ? [''] : view.members(step.each);
  return members
    .filter((member) =>
      step.when.every((text) => holds(readCondition(namingMember(text, placeholder, member)), view, scope)),
    )
    .flatMap((member) => {
      const made = cardStep(step, view, member, placeholder);
      return made === null ? [] : [{ stage: step.stage, step: made }];
    });
}

/** Null where a line that it is about can't be read: that line must be mended first, and says so itself. */
function cardStep(
  step: BenchStep,
  { craft, pack }: CraftView,
  member: string,
  placeholder: string | null,
): CardStep | null {
  const view = new CraftView(craft, pack); // its own, so that what it assumes is this step's alone
  const scope = dataScope(view);
  const fill = (text: string) => {
    const values = slotsIn(text).map((slot) => [
      slot,
      slot === memberSlot
        ? member.replaceAll('-', ' ')
        : slotWords(view, namingMember(slot, placeholder, member), scope),
    ]);
    return sentenceOf(text, Object.fromEntries(values));
  };
  const id = member === '' ? step.id : `${step.id} ${member}`;
  const { expected = [], readings = [] } = step;
  const made: CardStep = {
    id,
    title: fill(step.title),
    do: fill(step.do),
    see: fill(step.see),
    expected: expected.flatMap(({ words, is }) => figureFor(view, words, is)),
    readings: readings.map(({ words, unit, setting }, index) => ({
      id: `${id} ${index + 1}`,
      words: fill(words),
      unit,
      setting: setting ?? null,
    })),
    assumed: view.assumedInWords,
    source: step.source.text === 'common practice' ? null : step.source.text,
    target: targetFor(step, view, member, placeholder),
  };
  return view.unreadable.length > 0 ? null : made;
}

/** Nothing for a setting without a value: it never stands in a sentence, and its part in double brackets goes. */
function slotWords(view: CraftView, slot: string, scope: Scope): string {
  const isSetting = view.catalog.parameter(slot) !== undefined;
  if (isSetting && view.value(slot) === null) return '';
  return valueWords(view, slot) ?? String(slotText(slot, view, scope));
}

/** Lists and ranges as people say them: "950 to 1250 us". Null for all else. */
function valueWords(view: CraftView, path: string): string | null {
  const value = view.value(path);
  if (value?.kind === 'words') return value.value.map((word) => word.replaceAll('-', ' ')).join(', ');
  if (value?.kind !== 'range') return null;
  const [low] = exactText(value.low, value.unit).split(' ');
  return `${low} to ${exactText(value.high, value.unit)}`;
}

function figureFor(view: CraftView, words: string, is: string): readonly CardFigure[] {
  if (!is.startsWith('figure.')) {
    const text = view.shown(is);
    return view.value(is) === null ? [] : [{ words, text, span: null }];
  }
  const figure = figureOf(view, is.slice('figure.'.length));
  return figure === null ? [] : [{ words, text: figureText(figure), span: intervalText(figure) }];
}

/** The first setting that the step speaks of and that a line sets. */
function targetFor(
  step: BenchStep,
  view: CraftView,
  member: string,
  placeholder: string | null,
): Target | null {
  const slots = slotsIn(`${step.see} ${step.do} ${step.title}`);
  const conditions = step.when.map((text) => text.split(' ')[0] ?? '');
  for (const slot of [...slots, ...conditions]) {
    const target = targetOfPath(view, namingMember(slot, placeholder, member));
    if (target !== null) return target;
  }
  return null;
}
