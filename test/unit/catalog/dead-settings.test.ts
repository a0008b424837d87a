import assert from 'node:assert/strict';
import { profileOf } from '../../../server/src/board/profile/profile';
import { entriesOf } from '../../../server/src/board/writing/entries';
import type { KnownParameter } from '../../../server/src/catalog/known-parameter';
import type { CraftView } from '../../../server/src/craft/view';
import { figureOf, figureSources } from '../../../server/src/figures';
import { exactText } from '../../../server/src/units/quantity';
import { testCatalog } from '../../support/catalog';
import { findingsOf } from '../../support/findings';
import { wholeCraftWith } from '../../support/whole-craft';

/** Values of a parameter, all of them usual; none for what takes any text, place or list. */
function usualValues({ name, parameter, usual, unit }: KnownParameter): readonly string[] {
  const more = near[name] ?? [];
  switch (parameter.kind) {
    case 'quantity':
      if (usual === undefined || unit === undefined) return [];
      return [...across(usual.low, usual.high).map((value) => exactText(value, unit)), ...more];
    case 'count':
      if (usual === undefined) return [];
      return [...new Set(across(usual.low, usual.high).map(Math.round))].map(String);
    case 'flag':
      return ['off', 'on'];
    case 'word':
      return testCatalog.choices(parameter).map(({ name: word }) => word);
    default:
      return [];
  }
}

/** From end to end; by equal factors where the ends lie far apart. */
function across(low: number, high: number): readonly number[] {
  const isWide = low > 0 && high > 20 * low;
  return [0, 1, 0.5, 0.25, 0.75].map((share) =>
    isWide ? low * (high / low) ** share : low + share * (high - low),
  );
}

/** Usual values between which nothing else would look. */
const near: Readonly<Record<string, readonly string[]>> = {
  'radio-club.other.<pilot>.frequency': ['5800 MHz'],
};

/** What makes a setting matter, where the whole craft does not have it. */
const beside: Readonly<Record<string, readonly string[]>> = {
  'craft.wind-limit': ['flight.noon.wind = 10 m/s'],
  'flight.<name>.packs-flown': ['flight.noon.minutes = 60 min'],
  'flight.<name>.air-temperature': ['flight.noon.motor-temperature = 30 degC'],
  'flight.<name>.esc-temperature': ['esc.holds-back.heat = 80 degC'],
  'flight.<name>.weakest-link': ['receiver.quality-warning = 70 %'],
  'pack.<name>.burst': ['wire.battery-lead.peak-current = 90 A'],
  'pack.<name>.coldest': ['craft.air-temperature = 5 degC'],
  'radio-club.other.<pilot>.antenna-polarisation': [
    'video.antenna-polarisation = left-circular',
    'radio-club.other.maren.frequency = 5790 MHz',
  ],
  'video.antenna-polarisation': ['craft.purpose = race'],
  'wire.<device>.smoothing': ['wire.battery-lead.length = 200 mm'],
};

/** Of these it matters only whether they are there: they are tried against a craft without them. */
const ofPresence = new Set(['wire.<device>.smoothing']);

/** The members of the whole craft that a setting is tried on. */
const members: Readonly<Record<string, readonly string[]>> = {
  'pack.<name>': ['one'],
  'flight.<name>': ['noon'],
  'gyro.filter.<number>': ['1', '2', '3', '4'],
  'derivative.filter.<number>': ['1', '2', '3', '4'],
  'wire.<device>': ['battery-lead', 'receiver', 'camera', 'transmitter', 'buzzer'],
  'switch.<function>': ['arm'],
  'control.when.<situation>': ['high-throttle', 'motors-short', 'fast-turn'],
  'overlay.<element>': ['altitude'],
  'radio-club.other.<pilot>': ['maren'],
};

function pathsOf({ name }: KnownParameter): readonly string[] {
  const collection = name.slice(0, name.indexOf('>') + 1);
  if (collection === '') return [name];
  return (members[collection] ?? []).map((member) => name.replace(/<[a-z]+>/, member));
}

const profiles = testCatalog.boardNames().flatMap((name) => {
  const board = testCatalog.board(name);
  const profile = board === undefined ? null : profileOf(board);
  return profile === null ? [] : [profile];
});

/** What may change, the quickest to find out first: the text for the boards, findings, figures. */
const looks: readonly ((view: CraftView) => string)[] = [
  (view) => JSON.stringify(profiles.map((profile) => entriesOf(profile, view).entries)),
  (view) =>
    findingsOf(view.craft)
      // What is said of the line by itself is not what it does.
      .filter(({ check }) => !check.id.startsWith('line/'))
      .map(({ check, pack }) => `${check.id} ${pack}`)
      .sort()
      .join('\n'),
  (view) => figureSources.map(({ id }) => figureText(view, id)).join('\n'),
];

function figureText(view: CraftView, id: string): string {
  const figure = figureOf(view, id);
  return figure === null ? '' : `${id} ${figure.low} ${figure.likely} ${figure.high}`;
}

/** Whether the values make a difference to anything, on any member. */
function moves(known: KnownParameter): boolean {
  const { name } = known;
  const values = usualValues(known);
  return looks.some((look) =>
    pathsOf(known).some((path) => {
      const trials = values.map((value) => [`${path} = ${value}`]);
      const seen = new Set<string>();
      return (ofPresence.has(name) ? [...trials, []] : trials).some((lines) => {
        seen.add(look(wholeCraftWith([...(beside[name] ?? []), ...lines])));
        return seen.size > 1;
      });
    }),
  );
}

describe('no setting is dead', () => {
  const tried = [...testCatalog.parameters.values()].filter((known) => usualValues(known).length > 1);
  const isNote = ({ parameter }: KnownParameter) => parameter.isNote === true;

  for (const known of tried.filter((one) => !isNote(one))) {
    it(`${known.name} moves a figure, a finding or the text for a board`, () => assert.ok(moves(known)));
  }

  for (const known of tried.filter(isNote)) {
    it(`${known.name} is a note, and moves nothing`, () => assert.ok(!moves(known)));
  }

  it('but for those that take any text, any place or a list, and words that a craft or its board gives', () => {
    const untried = [...testCatalog.parameters.values()].filter((known) => !tried.includes(known));
    const given = ({ parameter }: KnownParameter) =>
      parameter.kind === 'word' &&
      (parameter.choicesFrom !== undefined || parameter.permutationOf !== undefined);
    const kinds = new Set(untried.filter((one) => !given(one)).map(({ parameter }) => parameter.kind));
    assert.deepEqual([...kinds].sort(), ['bare', 'curve', 'date', 'place', 'range', 'text', 'words']);
  });
});
