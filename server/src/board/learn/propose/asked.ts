import { lookOf } from '../../listing/value-look';
import type { LearnedSetting } from '../learned-settings';
import type { Sense } from '../words/guesses';
import type { Lexicon, SensedWord } from '../words/lexicon';
import { isUnit, isUnitWord, withoutUnit } from './said-unit';
import type { Targets } from './targets';

/** A word that is asked about. */
export interface AskedWord {
  readonly text: string;
  readonly senses: readonly Sense[];
  /** How much it tells. */
  readonly weight: number;
}

/** A setting in what its words speak of. */
export interface AskedSetting {
  readonly setting: LearnedSetting;
  readonly own: readonly AskedWord[];
  /** Of its groups: they say where it stands, and nothing by themselves. */
  readonly around: readonly AskedWord[];
  readonly remark: readonly AskedWord[];
  /** Numbers in its name, then those of its groups from the inside out. */
  readonly numbers: readonly number[];
  readonly ownNumbers: number;
  /** What stands before a number within its name: of `notch 2 width`, `notch`; null where no number does. */
  readonly subject: string | null;
  /** By the listing, the value or the end of the name, as it stands there; empty where none does. */
  readonly unit: string;
}

/** Makes what is asked of settings; groups of a listing repeat, so they are understood once. */
export class Asking {
  private readonly groups = new Map<string, readonly SensedWord[]>();

  constructor(
    private readonly lexicon: Lexicon,
    private readonly targets: Targets,
    /** Groups, or beginnings of names, in which the letters p, i and d stand together. */
    private readonly gains: ReadonlySet<string>,
  ) {}

  asked(setting: LearnedSetting): AskedSetting {
    const { name, unit, groups } = named(setting);
    const own = this.lexicon.understand(name, true);
    const around = [...groups].reverse().flatMap((group) => this.groupWords(group));
    const lettersTell = this.gains.has(gainsKey(setting)) || [...own, ...around].some(isAboutGains);
    const words = (all: readonly SensedWord[]) =>
      all.filter(({ isNumber }) => !isNumber).map((one) => this.word(one, lettersTell));
    const numbers = (all: readonly SensedWord[]) =>
      all.filter(({ isNumber }) => isNumber).map(({ text }) => Number(text));
    const byName = [...words(own), ...words(this.ofValue(setting)).filter((one) => !isUnclear(one))];
    const remarked = this.lexicon.understand(setting.stated?.remark ?? '', false);
    const remark = words(remarked);
    // Where the name says nothing at all, the remark is its name.
    const isNameless = remark.length > 0 && byName.every(isUnclear);
    return {
      setting,
      own: isNameless ? remark : byName,
      around: words(around),
      remark: isNameless ? [] : remark,
      numbers: [...numbers(isNameless ? remarked : own).reverse(), ...numbers(around)],
      ownNumbers: isNameless ? 0 : numbers(own).length,
      subject: subjectOf(own),
      unit: (setting.stated?.unit ?? unitBehind(setting.value)) || unit || unitRemarked(setting),
    };
  }

  /** A value that is a word with a number behind it, `aux 3`, says what it is the number of. */
  private ofValue({ look, value }: LearnedSetting): readonly SensedWord[] {
    const [, word = ''] =
      look === 'word' || look === 'words' ? (/^(\p{L}{2,12})[ _-]?\d{1,2}$/u.exec(value) ?? []) : [];
    return word === '' ? [] : this.lexicon.understand(word, false);
  }

  private groupWords(group: string): readonly SensedWord[] {
    const known = this.groups.get(group);
    if (known !== undefined) return known;
    const made = this.lexicon.understand(group, true);
    this.groups.set(group, made);
    return made;
  }

  private word({ text, senses }: SensedWord, lettersTell: boolean): AskedWord {
    const letter = lettersTell ? gainLetters.get(text) : undefined;
    const told = letter === undefined ? senses : [{ concept: letter, trust: 0.9 }];
    const known = told.filter(
      ({ concept }) => !concept.startsWith('=') || this.targets.byConcept.has(concept),
    );
    const weights = known
      .filter(({ trust }) => trust >= 0.5)
      .map(({ concept }) => this.targets.weightOf(concept));
    return { text, senses: known, weight: Math.max(0, ...weights) || strangeWeight };
  }
}

/**
 * What a setting is called, in which unit: where its name is a unit alone, `cut 1 / hz`, its group is the name; where it
 * is a number alone, `cut / 1`, both together are.
 */
function named({ name, groups }: LearnedSetting): NameWithGroups {
  const inner = groups.at(-1);
  if (inner !== undefined && isUnitWord(name))
    return { name: inner, unit: name, groups: groups.slice(0, -1) };
  if (inner !== undefined && /^\d{1,2}$/.test(name) && /^\p{L}{2}/u.test(inner))
    return { name: `${inner} ${name}`, unit: '', groups: groups.slice(0, -1) };
  return { ...withoutUnit(name), groups };
}

interface NameWithGroups {
  readonly name: string;
  readonly unit: string;
  /** Those around it, from the outside in. */
  readonly groups: readonly string[];
}

function subjectOf(own: readonly SensedWord[]): string | null {
  const at = own.findIndex(({ isNumber }) => isNumber);
  if (at < 1 || at === own.length - 1) return null;
  return own
    .slice(0, at)
    .map(({ text }) => text)
    .join(' ');
}

/** A remark that is a unit and nothing else. */
function unitRemarked({ stated }: LearnedSetting): string {
  const remark = stated?.remark ?? '';
  return isUnit(remark) ? remark : '';
}

function unitBehind(value: string): string {
  const look = lookOf(value);
  return look.kind === 'measure' ? look.unit : '';
}

/** What a word tells that nobody knows. */
const strangeWeight = 0.7;

function isUnclear({ senses }: AskedWord): boolean {
  return senses.every(({ concept, trust }) => trust < 0.6 || concept.startsWith('='));
}

const gainLetters: ReadonlyMap<string, string> = new Map([
  ['p', 'proportional'],
  ['i', 'integral'],
  ['d', 'derivative'],
]);

const gainConcepts = new Set(['roll', 'pitch', 'yaw', 'gain', 'pid', 'controller-loop']);

function isAboutGains({ senses }: SensedWord): boolean {
  return senses.some(({ concept, trust }) => trust >= 0.8 && gainConcepts.has(concept));
}

/** Where letters stand together: the groups with the name but for a letter at an end. */
function gainsKey({ groups, name }: LearnedSetting): string {
  return JSON.stringify([...groups, name.replace(/(?<![\p{L}])[pid](?![\p{L}])/iu, '*')]);
}

/** The places of a listing where p, i and d stand side by side. */
export function gainsOf(settings: readonly LearnedSetting[]): ReadonlySet<string> {
  const letters = new Map<string, Set<string>>();
  for (const setting of settings) {
    const letter = /(?<![\p{L}])([pid])(?![\p{L}])/iu.exec(setting.name)?.[1]?.toLowerCase();
    if (letter === undefined) continue;
    const key = gainsKey(setting);
    const all = letters.get(key) ?? new Set();
    all.add(letter);
    letters.set(key, all);
  }
  return new Set([...letters].flatMap(([key, all]) => (all.size === 3 ? [key] : [])));
}
