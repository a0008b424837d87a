import type { Hardware } from '../catalog/model/board-hardware';
import type { CraftView } from '../craft/view';

/** A check that rests where a part of the board is not described. */
interface WaitingCheck {
  readonly check: string;
  /** It has something to look at only where one of these is set; without it, on every craft. */
  readonly about?: readonly string[];
  /** What the script may say itself: where all of these are set, the board is not asked. */
  readonly unless?: readonly string[];
}

/** A part of the board that checks need. */
interface Need {
  /** As the profile's file names it under "hardware", and the key there that holds it. */
  readonly part: string;
  readonly key: keyof Hardware;
  readonly isKnown: (hardware: Hardware) => boolean;
  readonly waiting: readonly WaitingCheck[];
}

/** A part that nobody described, with the checks that wait for it on a craft. */
export interface Unmet {
  readonly part: string;
  readonly key: keyof Hardware;
  readonly checks: readonly string[];
}

const onPorts = [
  'receiver.port',
  'telemetry.port',
  'position.port',
  'video.control-port',
  'esc.telemetry-port',
];
const supplies = [
  'wire.receiver.supply',
  'wire.camera.supply',
  'wire.transmitter.supply',
  'wire.buzzer.supply',
  'wire.lights.supply',
  'receiver.supply',
  'video.supply',
];
const railLimits = [
  'board.supply.five-volt-limit',
  'board.supply.three-volt-limit',
  'board.supply.camera-rail-limit',
];
const divider = ['power.divider-upper', 'power.divider-lower'];
const fullScale = ['gyro.full-scale'];
const reference = ['power.reference-voltage'];
const sensors = ['board.barometer', 'board.compass'];

function each(checks: readonly string[], asked: Omit<WaitingCheck, 'check'> = {}): readonly WaitingCheck[] {
  return checks.map((check) => ({ check, ...asked }));
}

/** Every part of a board that a check reads, and which ones read it. A test holds this against what they do. */
const needs: readonly Need[] = [
  {
    part: 'ports',
    key: 'ports',
    isKnown: ({ ports }) => ports !== undefined,
    waiting: each(['wire/port-direction', 'wire/port-inversion', 'wire/port-shared-with-board'], {
      about: onPorts,
    }),
  },
  {
    part: '"directions" of the ports',
    key: 'ports',
    isKnown: ({ ports = [] }) => ports.every(({ directions }) => directions !== undefined),
    waiting: each(['wire/port-direction'], { about: onPorts }),
  },
  {
    part: '"invertedIn" and "invertedOut" of the ports',
    key: 'ports',
    isKnown: ({ ports = [] }) =>
      ports.every(({ invertedIn, invertedOut }) => invertedIn !== undefined && invertedOut !== undefined),
    waiting: each(['wire/port-inversion'], { about: onPorts }),
  },
  {
    part: 'serialClock',
    key: 'serialClock',
    isKnown: ({ serialClock }) => serialClock !== undefined,
    waiting: each(['wire/clock-error'], { about: onPorts }),
  },
  {
    part: 'motorOutputs',
    key: 'motorOutputs',
    isKnown: ({ motorOutputs }) => motorOutputs !== undefined,
    waiting: each(['wire/too-few-motor-outputs'], { about: ['craft.layout'] }),
  },
  {
    part: 'rails',
    key: 'rails',
    isKnown: ({ rails }) => rails !== undefined,
    waiting: [
      ...each(['wire/no-such-rail'], { about: supplies }),
      ...each(['wire/limit-above-board'], { about: railLimits }),
      ...each(['wire/rail-overload', 'wire/rail-peak', 'wire/rail-margin', 'wire/load-unknown'], {
        about: supplies,
        unless: railLimits,
      }),
    ],
  },
  {
    part: '"voltage" of the rails',
    key: 'rails',
    isKnown: ({ rails = [] }) => rails.every(({ voltage }) => voltage !== undefined),
    waiting: [
      ...each(['wire/no-such-rail'], { about: supplies }),
      ...each(['wire/limit-above-board'], { about: railLimits }),
      ...each(['wire/rail-overload', 'wire/rail-peak', 'wire/rail-margin', 'wire/load-unknown'], {
        about: supplies,
      }),
    ],
  },
  {
    part: '"currentLimit" of the rails',
    key: 'rails',
    isKnown: ({ rails = [] }) => rails.every(({ currentLimit }) => currentLimit !== undefined),
    waiting: [
      ...each(['wire/limit-above-board'], { about: railLimits }),
      ...each(['wire/rail-overload', 'wire/rail-peak', 'wire/rail-margin'], {
        about: supplies,
        unless: railLimits,
      }),
    ],
  },
  {
    part: 'gyro.rates',
    key: 'gyro',
    isKnown: ({ gyro }) => gyro?.rates !== undefined,
    waiting: each(['tune/gyro-rate-not-offered'], { about: ['gyro.rate'] }),
  },
  {
    part: 'gyro.fullScale',
    key: 'gyro',
    isKnown: ({ gyro }) => gyro?.fullScale !== undefined,
    waiting: [
      ...each(['tune/full-scale-beyond-board'], { about: fullScale }),
      ...each(['tune/curve-beyond-gyro', 'tune/curve-near-gyro'], {
        about: ['stick.roll.curve', 'stick.pitch.curve', 'stick.yaw.curve'],
        unless: fullScale,
      }),
    ],
  },
  {
    part: 'packInput.dividerUpper and packInput.dividerLower',
    key: 'packInput',
    isKnown: ({ packInput }) => packInput?.dividerUpper !== undefined && packInput.dividerLower !== undefined,
    waiting: [
      ...each(['power/divider-overflow', 'power/divider-close'], { unless: divider }),
      ...each(['power/divider-not-the-boards'], { about: divider }),
    ],
  },
  {
    part: 'packInput.reference',
    key: 'packInput',
    isKnown: ({ packInput }) => packInput?.reference !== undefined,
    waiting: [
      ...each(['power/divider-overflow', 'power/divider-close'], { unless: reference }),
      ...each(['power/current-sensor-overflow'], { about: ['power.current-scale'], unless: reference }),
    ],
  },
  {
    part: 'packInput.mostCells',
    key: 'packInput',
    isKnown: ({ packInput }) => packInput?.mostCells !== undefined,
    waiting: each(['power/cells-above-board']),
  },
  {
    part: 'packInput.currentShunt',
    key: 'packInput',
    isKnown: ({ packInput }) => packInput?.currentShunt !== undefined,
    waiting: [
      ...each(['power/shunt-not-on-board'], { about: ['power.current-measure'] }),
      ...each(['see/element-without-source'], {
        about: ['overlay.current.place', 'overlay.used-charge.place'],
        unless: ['power.current-measure'],
      }),
    ],
  },
  {
    part: 'log',
    key: 'log',
    isKnown: ({ log }) => log !== undefined,
    waiting: each(['remember/no-log-memory'], { about: ['record.medium'] }),
  },
  {
    part: 'sensors',
    key: 'sensors',
    isKnown: (hardware) => hardware.sensors !== undefined,
    waiting: [
      ...each(['wire/sensor-not-on-board'], { about: sensors }),
      ...each(['see/element-without-source'], {
        about: ['overlay.altitude.place'],
        unless: ['board.barometer'],
      }),
      ...each(['obey/function-without-sensor'], {
        about: ['switch.hold-altitude.channel'],
        unless: ['board.barometer'],
      }),
    ],
  },
];

/** What nobody has described of the board of a craft, as far as checks wait for it there. */
export function unmetNeeds(view: CraftView): readonly Unmet[] {
  const { hardware } = view;
  return needs.flatMap(({ part, key, isKnown, waiting }) => {
    if (isKnown(hardware)) return [];
    const checks = waiting.filter((one) => waits(one, view)).map(({ check }) => check);
    return checks.length === 0 ? [] : [{ part, key, checks }];
  });
}

function waits({ about, unless }: WaitingCheck, view: CraftView): boolean {
  const isAsked = about === undefined || about.some((path) => view.isSet(path));
  return isAsked && !(unless?.every((path) => view.isSet(path)) ?? false);
}
