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

/** A maker's table of a motor that turns slower than the whole craft's. */
const rows = [
  [40, 23.6, 2.4, 420, 6100, 0.062],
  [60, 23.4, 5.9, 800, 8300, 0.118],
  [80, 23.0, 11.8, 1290, 10_600, 0.19],
  [95, 22.6, 17.1, 1650, 11_900, 0.243],
].flatMap(([throttle, volts, amperes, grams, turns, torque], index) =>
  [
    `throttle = ${throttle} %`,
    `voltage = ${volts} V`,
    `current = ${amperes} A`,
    `thrust = ${grams} g`,
    `speed = ${turns} rpm`,
    `torque = ${torque} N*m`,
  ].map((line) => `motor.bench.${index + 1}.${line}`),
);
const bench = ['motor.kv = 560 rpm/V', ...rows];

/** What makes a setting matter, where the whole craft does not have it. */
const beside: Readonly<Record<string, readonly string[]>> = {
  'craft.wind-limit': ['flight.noon.wind = 10 m/s'],
  'motor.bench.<number>.voltage': bench,
  'motor.bench.<number>.current': bench,
  'motor.bench.<number>.thrust': bench,
  'motor.bench.<number>.speed': bench,
  'motor.bench.<number>.torque': bench,
  'motor.bench.<number>.throttle': bench,
  'motor.magnet-limit': ['flight.noon.motor-temperature = 100 degC', 'motor.temperature-limit = 150 degC'],
  'motor.stator-diameter': ['motor.stator-height = 6 mm'],
  'motor.stator-height': ['motor.stator-diameter = 28 mm'],
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
  'video.locked': ['video.power-steps.1 = 1 mW'],
  'video.power-steps.<number>': ['video.power = 0.1 mW', 'video.waiting-power = 0 mW'],
  'wire.<device>.smoothing': ['wire.battery-lead.length = 200 mm'],
};

/** Of these it matters only whether they are there: they are tried against a craft without them. */
const ofPresence = new Set(['wire.<device>.smoothing']);

/** The members of the whole craft that a setting is tried on. */
const members: Readonly<Record<string, readonly string[]>> = {
  'pack.<name>': ['one'],
  'flight.<name>': ['noon'],
  'motor.bench.<number>': ['1', '4'],
  'video.power-steps.<number>': ['1'],
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
