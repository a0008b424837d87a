import assert from 'node:assert/strict';
import type { Hardware } from '../../../../server/src/catalog/model/board-hardware';
import type { FindingSummary } from '../../../support/findings';
import { onBoard } from '../../../support/other-boards';

/** A board of which everything is described, and little is good. */
const full: Hardware = {
  ports: [
    { name: 'uart1', directions: ['in', 'out'], invertedIn: false, invertedOut: false, sharedWith: 'USB' },
    { name: 'uart2', directions: ['out'], invertedIn: false, invertedOut: false },
    { name: 'uart3', directions: ['in', 'out'], invertedIn: false, invertedOut: false },
  ],
  serialClock: '4 MHz',
  motorOutputs: 2,
  rails: [
    { name: 'five-volt', voltage: '5 V', currentLimit: '0.5 A' },
    { name: 'nine-volt', voltage: '9 V', currentLimit: '1 A' },
    { name: 'three-volt', voltage: '3.3 V', currentLimit: '1 A' },
  ],
  gyro: { rates: ['1 kHz'], fullScale: '500 deg/s', bits: 16 },
  packInput: {
    dividerUpper: '5.6 kohm',
    dividerLower: '1 kohm',
    reference: '3.3 V',
    mostCells: 2,
    currentShunt: false,
  },
  log: null,
  overlay: true,
  sensors: [],
};

/** Crafts about which every check that asks the board has something to say. */
const crafts: readonly string[] = [
  `
[craft]
name   = "Dabchick"
layout = quad-x
[receiver]
link   = sbus
port   = uart2
[telemetry]
link   = crsf
port   = uart1
[position]
protocol = nmea
port     = uart3
speed    = 420000 baud
[pack.six]
chemistry = lipo
cells     = 6
capacity  = 1 Ah
[wire.receiver]
supply  = 5 V
current = 0.6 A
[wire.camera]
supply       = 9 V
current      = 0.1 A
peak-current = 2 A
[wire.buzzer]
supply  = 3.3 V
current = 0.95 A
[wire.lights]
supply = 3.3 V
[wire.transmitter]
supply  = 12 V
current = 0.2 A
[gyro]
rate       = 8 kHz
full-scale = 2000 deg/s
[record]
medium = flash
[board]
barometer = on
[overlay.current]
place = [1, 1]
[overlay.altitude]
place = [2, 1]
`,
  `
[craft]
name = "Dabchick"
[stick.roll]
curve = 0 % -> 0 deg/s, 100 % -> 700 deg/s
[stick.pitch]
curve = 0 % -> 0 deg/s, 100 % -> 470 deg/s
[pack.two]
chemistry = lipo
cells     = 5
capacity  = 1 Ah
[power]
measure         = board
divider-upper   = 8 kohm
current-measure = shunt
current-scale   = 50 mV/A
[wire.battery-lead]
peak-current = 90 A
[board.supply]
five-volt-limit = 3 A
[switch.hold-altitude]
channel = 7
on      = 1700 us..2100 us
[overlay.altitude]
place = [2, 1]
`,
  `
[craft]
name = "Dabchick"
[pack.five]
chemistry = lipo
cells     = 5
capacity  = 1 Ah
`,
  `
[craft]
name = "Dabchick"
[power]
divider-upper = 22 kohm
divider-lower = 1 kohm
`,
];

/** The same board with one part of it not described. */
const without: ReadonlyMap<string, Hardware> = new Map(
  Object.entries({
    ports: rest('ports'),
    '"directions" of the ports': {
      ...full,
      ports: full.ports?.map(({ directions: _, ...port }) => port),
    },
    '"invertedIn" and "invertedOut" of the ports': {
      ...full,
      ports: full.ports?.map(({ invertedIn: _, invertedOut: __, ...port }) => port),
    },
    serialClock: rest('serialClock'),
    motorOutputs: rest('motorOutputs'),
    rails: rest('rails'),
    '"voltage" of the rails': { ...full, rails: full.rails?.map(({ voltage: _, ...rail }) => rail) },
    '"currentLimit" of the rails': {
      ...full,
      rails: full.rails?.map(({ currentLimit: _, ...rail }) => rail),
    },
    'gyro.rates': { ...full, gyro: { fullScale: '500 deg/s' } },
    'gyro.fullScale': { ...full, gyro: { rates: ['1 kHz'] } },
    'packInput.dividerUpper and packInput.dividerLower': {
      ...full,
      packInput: { reference: '3.3 V', mostCells: 2, currentShunt: false },
    },
    'packInput.reference': withoutInput('reference'),
    'packInput.mostCells': withoutInput('mostCells'),
    'packInput.currentShunt': withoutInput('currentShunt'),
    log: rest('log'),
    sensors: rest('sensors'),
  }),
);

function rest(part: keyof Hardware): Hardware {
  const { [part]: _, ...others } = full;
  return others;
}

function withoutInput(part: keyof NonNullable<Hardware['packInput']>): Hardware {
  const { [part]: _, ...packInput } = full.packInput ?? {};
  return { ...full, packInput };
}

/** What was found on each board, by the craft. */
const known = new Map<Hardware | null, Map<string, readonly FindingSummary[]>>();

/** Looked for once: every board is held against the full one. */
function found(craft: string, hardware: Hardware | null): readonly FindingSummary[] {
  const onIt = known.get(hardware) ?? new Map<string, readonly FindingSummary[]>();
  known.set(hardware, onIt);
  const findings = onIt.get(craft) ?? look(craft, hardware);
  onIt.set(craft, findings);
  return findings;
}

function look(craft: string, hardware: Hardware | null): readonly FindingSummary[] {
  const named = hardware === null ? '' : 'board.profile = dabchick';
  return onBoard({ name: 'dabchick', hardware: hardware ?? {} }, `${named}${craft}`);
}

function note(findings: readonly FindingSummary[]): FindingSummary | undefined {
  return findings.find(({ id }) => id === 'wire/board-undescribed' || id === 'wire/board-missing');
}

/** The checks that wait, by the part that they wait for. */
function waiting(findings: readonly FindingSummary[]): ReadonlyMap<string, readonly string[]> {
  const related = note(findings)?.related ?? [];
  return new Map(
    related.map(({ message: text }) => {
      const [, part = '', checks = ''] = /^(.*), for (.*)\.$/.exec(text) ?? [];
      return [part, checks.split(/, | and /)];
    }),
  );
}

const ids = (findings: readonly FindingSummary[]) => new Set(findings.map(({ id }) => id));

describe('a board of which a part is not described', () => {
  it('has no note where all of it is', () => {
    for (const craft of crafts) assert.equal(note(found(craft, full)), undefined);
  });

  for (const [part, hardware] of without) {
    it(`says what waits for ${part}, and finds all else`, () => {
      const seen = new Set<string>();
      for (const craft of crafts) {
        const [before, after] = [found(craft, full), found(craft, hardware)];
        const waits = waiting(after).get(part) ?? [];
        assert.deepEqual([...waiting(after).keys()], waits.length === 0 ? [] : [part]);
        const gone = [...ids(before)].filter((id) => !ids(after).has(id));
        assert.deepEqual(
          gone.filter((id) => !waits.includes(id)),
          [],
          'no check rests without being said to',
        );
        assert.deepEqual(
          [...ids(after)].filter((id) => !ids(before).has(id)),
          waits.length === 0 ? [] : ['wire/board-undescribed'],
          'nothing is found for want of it',
        );
        for (const id of gone) seen.add(id);
      }
      const named = new Set(crafts.flatMap((craft) => waiting(found(craft, hardware)).get(part) ?? []));
      assert.deepEqual([...named].sort(), [...seen].sort(), 'each that is said to wait had something to say');
    });
  }

  it('is told in one note, with all that waits', () => {
    const findings = found(crafts[0] ?? '', {});
    assert.equal(findings.filter(({ id }) => id.startsWith('wire/board-')).length, 1);
    assert.equal(
      note(findings)?.message,
      'Nobody has described the ports, clock of the ports, motor outputs, rails, gyro, pack input, log and sensors of dabchick in full: 18 checks wait for that.',
    );
    assert.equal(
      note(findings)?.advice,
      'Describe them under "hardware" in boards/dabchick.json; what nobody knows may stay out.',
    );
  });

  it('has no must-fix that the whole of it has not, described or named or not', () => {
    for (const craft of crafts) {
      const serious = (hardware: Hardware | null) =>
        found(craft, hardware).filter(({ level }) => level === 'must-fix');
      const known = ids(serious(full));
      for (const hardware of [...without.values(), {}, null])
        assert.deepEqual(
          [...ids(serious(hardware))].filter((id) => !known.has(id)),
          [],
        );
    }
  });

  it('is the same for a craft that names no board', () => {
    for (const craft of crafts) {
      const [unnamed, empty] = [found(craft, null), found(craft, {})];
      const count = (findings: readonly FindingSummary[]) =>
        /\d+ checks?/.exec(note(findings)?.message ?? '')?.[0];
      assert.equal(note(unnamed)?.id, 'wire/board-missing');
      assert.equal(count(unnamed), count(empty));
      const others = (findings: readonly FindingSummary[]) =>
        findings.filter((one) => one !== note(findings)).map(({ id, marked }) => `${id} ${marked}`);
      assert.deepEqual(others(unnamed), others(empty));
    }
  });
});
