import assert from 'node:assert/strict';
import fc from 'fast-check';
import {
  enduranceSpeed,
  highestSpeed,
  leastAt,
  rangeSpeed,
  reachOutAndBack,
} from '../../server/src/physics/best-speed';
import {
  type Drag,
  dragAt,
  dragFactors,
  estimatedDragArea,
  estimatedLinearDrag,
  speedForDrag,
} from '../../server/src/physics/drag';
import {
  type Airframe,
  hoverInflow,
  inflowShare,
  levelFlight,
  profileRise,
} from '../../server/src/physics/forward-flight';
import { near } from '../support/near';
import { plainInduced, plainLeast, plainPower } from '../support/plain-flight';

const degree = Math.PI / 180;
const gravity = 9.806_65;

describe('induced velocity in forward flight (H. Glauert, momentum theory)', () => {
  const speeds = [0, 0.5, 1, 1.5, 2, 3, 4, 5, 6, 8, 10];

  it('of a level disc, as a share of the hover’s: 0.786151 at its induced velocity, 0.485868 at twice, 0.199840 at five times (the quartic by hand)', () => {
    const shares = [
      1, 0.939565, 0.786151, 0.616603, 0.485868, 0.331319, 0.249515, 0.19984, 0.166602, 0.124985, 0.099995,
    ];
    for (const [index, speed] of speeds.entries())
      assert.ok(Math.abs(inflowShare(speed, 0) - (shares[index] ?? 0)) < 1e-6, `${speed}`);
  });

  it('of a disc that leans 30 degrees: 0.682328 at its induced velocity, 0.443515 at twice (the quartic by hand)', () => {
    const shares = [
      1, 0.847546, 0.682328, 0.545147, 0.443515, 0.315502, 0.242336, 0.196046, 0.16437, 0.124027, 0.099501,
    ];
    for (const [index, speed] of speeds.entries())
      assert.ok(Math.abs(inflowShare(speed, 30 * degree) - (shares[index] ?? 0)) < 1e-6, `${speed}`);
  });

  it('of a climbing disc: 0.780776, 0.618034 and 0.414214 at half, once and twice (−V/2 + √(V²/4 + 1))', () => {
    for (const [climb, share] of [
      [0.5, 0.780776],
      [1, 0.618034],
      [2, 0.414214],
    ] as const)
      assert.ok(Math.abs(inflowShare(climb, 90 * degree) - share) < 1e-6);
  });

  it('is found as by halving, whatever the craft does (a second, plain way)', () => {
    const craft = { weight: 0, discs: 0.05, density: 1.2, linear: 0, area: 0 };
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 80, noNaN: true }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 1.5, noNaN: true }),
        (thrust, speed, tilt) => {
          const hover = hoverInflow(thrust, 0.05, 1.2);
          near(hover * inflowShare(speed / hover, tilt), plainInduced(thrust, craft, speed, tilt), 1e-9);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('a complete power curve (Y. Zeng, J. Xu, R. Zhang, IEEE Trans. Wireless Comm. 2019)', () => {
  // As published: blade profile, induced with a tenth more, fuselage with 0.6 of the rotor's solid area.
  const [profile, induced, hover] = [79.8563, 88.6279, 4.03];
  const fuselage: Drag = { linear: 0, area: 0.6 * 0.05 * 0.503 };
  const power = (speed: number) =>
    profile * profileRise(speed, 120) +
    induced * inflowShare(speed / hover, 0) +
    dragAt(fuselage, speed, 1.225) * speed;

  it('168.484 W in the hover, 129.003 at 8 m/s, 126.029 at 10, 178.296 at 20, 356.284 at 30', () => {
    const watts = [168.484, 163.345, 143.608, 129.003, 126.029, 127.802, 138.543, 178.296, 248.952, 356.284];
    for (const [index, speed] of [0, 2, 5, 8, 10, 12, 15, 20, 25, 30].entries())
      assert.ok(Math.abs(power(speed) - (watts[index] ?? 0)) < 1e-3, `${speed}: ${power(speed)}`);
  });

  it('its inputs from 20 N on a rotor of 0.4 m: 4.02854 m/s induced', () =>
    near(hoverInflow(20, 0.503, 1.225), 4.02854, 2e-5));

  it('stays up longest at 10.212 m/s with 126.003 W, whatever is guessed', () => {
    for (const guess of [null, 0, 2, 9, 10.2, 11, 13, 59, 70]) {
      const speed = enduranceSpeed(power, 60, guess);
      near(speed, 10.212, 1e-4);
      near(power(speed), 126.003, 1e-5);
    }
  });

  it('gets farthest at 18.295 m/s, with 8.82873 J/m, whatever is guessed', () => {
    for (const guess of [null, 0, 4, 17, 18.3, 20, 23, 59, 70]) {
      const best = rangeSpeed(power, 60, 0, guess);
      near(best?.speed ?? 0, 18.295, 1e-4);
      near(best?.perMetre ?? 0, 8.82873, 1e-5);
    }
  });
});

/** 0.6 kg on four discs of five inches. */
function five(drag: Drag): Airframe {
  return { weight: 0.6 * gravity, drag, discArea: 4 * Math.PI * 0.0635 ** 2, airDensity: 1.225 };
}

const linear: Drag = { linear: 0.1572, area: 0 };
const flat: Drag = { linear: 0, area: 0.01 };

describe('level flight of 0.6 kg on four discs of five inches (T = √(W² + D²), tan θ = D / W, by hand)', () => {
  it('leans 7.609 degrees at 5 m/s, 14.958 at 10, 33.740 at 25, with a drag of 0.1572 N a m/s', () => {
    const rows = [
      [0, 0, 5.884, 6.8845, 40.509],
      [2.5, 3.821, 5.8971, 6.5929, 39.861],
      [5, 7.609, 5.9363, 5.8457, 38.632],
      [7.5, 11.331, 6.0009, 4.9505, 38.55],
      [10, 14.958, 6.0904, 4.1637, 41.078],
      [12.5, 18.467, 6.2034, 3.5593, 46.642],
      [15, 21.838, 6.3389, 3.111, 55.09],
      [20, 28.117, 6.6713, 2.5223, 79.707],
      [25, 33.74, 7.0758, 2.1699, 113.603],
    ] as const;
    for (const [speed, tilt, thrust, inflow, watts] of rows) {
      const level = levelFlight(five(linear), speed);
      assert.ok(Math.abs(level.tilt / degree - tilt) < 1e-3, `${speed}`);
      near(level.thrust, thrust, 1e-4);
      near(level.induced, inflow, 1e-4);
      near(level.idealPower, watts, 1e-4);
    }
  });

  it('takes 36.061, 31.170, 39.089, 64.540 and 110.831 W at 5, 10, 15, 20 and 25 m/s with 0.01 m² instead', () => {
    for (const [speed, watts] of [
      [5, 36.061],
      [10, 31.17],
      [15, 39.089],
      [20, 64.54],
      [25, 110.831],
    ] as const)
      near(levelFlight(five(flat), speed).idealPower, watts, 1e-4);
  });

  it('with 0.45 overall and 5 W for electronics: 6.4 and 14.8 m/s for time and way, 9.9 and 14.3 with 0.01 m²', () => {
    const cases = [
      [linear, 6.4, 90.17, 14.8, 8.493],
      [flat, 9.9, 74.26, 14.3, 6.098],
    ] as const;
    for (const [drag, longest, watts, farthest, perMetre] of cases) {
      const power = (speed: number) => levelFlight(five(drag), speed).idealPower / 0.45 + 5;
      near(power(0), 95.02, 1e-4);
      const endurance = enduranceSpeed(power, 60);
      assert.ok(Math.abs(endurance - longest) < 0.1, `${endurance}`);
      near(power(endurance), watts, 1e-4);
      const best = rangeSpeed(power, 60);
      assert.ok(Math.abs((best?.speed ?? 0) - farthest) < 0.1);
      near(best?.perMetre ?? 0, perMetre, 1e-4);
    }
  });

  it('flies faster against a wind: 16.96, 18.83 and 22.36 m/s against 3, 5 and 8; 15.26, 16.18, 17.98 with 0.01 m²', () => {
    const cases = [
      [linear, 3, 16.96, 10.477],
      [linear, 5, 18.83, 12.104],
      [linear, 8, 22.36, 14.988],
      [flat, 3, 15.26, 7.65],
      [flat, 5, 16.18, 9.075],
      [flat, 8, 17.98, 12.07],
    ] as const;
    for (const [drag, wind, speed, perMetre] of cases) {
      const power = (at: number) => levelFlight(five(drag), at).idealPower / 0.45 + 5;
      const best = rangeSpeed(power, 60, wind);
      assert.ok(Math.abs((best?.speed ?? 0) - speed) < 0.05, `${best?.speed}`);
      near(best?.perMetre ?? 0, perMetre, 2e-4);
    }
  });

  it('takes the power, and has the best speeds, of a second, plain way', () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        number(0.3, 40),
        number(0.002, 0.3),
        number(0, 0.5),
        number(0.0005, 0.03),
        (weight, discs, k, f) => {
          const plain = { weight, discs, density: 1.2, linear: k, area: f };
          const frame = { weight, discArea: discs, airDensity: 1.2, drag: { linear: k, area: f } };
          const power = (speed: number) => levelFlight(frame, speed).idealPower;
          for (const speed of [0, 3, 9, 27]) near(power(speed), plainPower(plain, speed), 1e-9);
          const longest = plainLeast((at) => plainPower(plain, at), 0, 20);
          near(power(enduranceSpeed(power, 20)), plainPower(plain, longest), 3e-4);
          const farthest = plainLeast((at) => plainPower(plain, at) / at, 0.01, 20);
          near(rangeSpeed(power, 20)?.perMetre ?? 0, plainPower(plain, farthest) / farthest, 3e-4);
        },
      ),
      { numRuns: 25 },
    );
  }).timeout(30_000);
});

describe('drag', () => {
  it('comes to the tangent of the lean times the weight: 0.6 kg at 18.699 m/s leaning 20 degrees, 30.994 at 45 and 73.811 at 80 with 0.01 m²; 13.62 and 37.43 with 0.1572 N a m/s (D = W tan θ)', () => {
    const weight = 0.6 * gravity;
    for (const [drag, tilt, speed] of [
      [flat, 20, 18.699],
      [flat, 30, 23.551],
      [flat, 45, 30.994],
      [flat, 60, 40.791],
      [flat, 80, 73.811],
      [linear, 20, 13.62],
      [linear, 45, 37.43],
    ] as const)
      near(speedForDrag(drag, weight * Math.tan(tilt * degree), 1.225), speed, 3e-4);
  });

  it('holds a craft of four times its weight in thrust to 49.499 m/s, leaning 75.522 degrees, with both (D = W √((T/W)² − 1))', () => {
    const weight = 0.6 * gravity;
    const both = { linear: 0.1572, area: 0.01 };
    near(speedForDrag(both, weight * Math.sqrt(15), 1.225), 49.499, 1e-4);
    near(dragAt(both, 49.499, 1.225), weight * Math.sqrt(15), 1e-4);
    near(speedForDrag(flat, weight * Math.sqrt(63), 1.225), 87.321, 1e-4);
    const level = levelFlight(five(both), 49.499);
    near(level.tilt / degree, 75.522, 1e-4);
    near(level.thrust, 4 * weight, 1e-4);
    const top = highestSpeed((speed) => 4 * weight - levelFlight(five(both), speed).thrust, 150);
    near(top, 49.499, 1e-4);
  });

  it('of rotors is 0.1572 N a m/s for 0.6 kg on five inches (G. Hattenberger and others, IMAV 2022)', () =>
    near(estimatedLinearDrag(0.6, 0.127), 0.1572, 1e-9));

  it('of rotors has published ones in its span (Hattenberger 2022, Faessler 2018, Förster 2015, RotorPy’s 0.5 kg craft, NASA 2016, Illinois 2019)', () => {
    for (const [mass, inches, published] of [
      [0.547, 5, 0.153],
      [1.067, 5, 0.23],
      [0.61, 6, 0.544 * 0.61],
      // Rotor drag a rotor and rad/s, by the speed of four rotors in the hover.
      [0.03, 1.77, 4 * 1.025e-6 * Math.sqrt((0.03 * gravity) / 4 / 2.3e-8)],
      [0.5, 7.87, 4 * 1.19e-4 * Math.sqrt((0.5 * gravity) / 4 / 5.57e-6)],
      // Drag of the powered craft at hover thrust and 6.13 m/s, in pounds.
      [1.497, 10, (0.31 * 4.448) / 6.13],
      [1.27, 9.6, (0.23 * 4.448) / 6.13],
      // D = 0.1816 V − 0.02326 V² + 0.004045 V³ at 8 m/s.
      [3.29, 13.5, 2.035 / 8],
    ] as const) {
      const ratio = published / estimatedLinearDrag(mass, inches * 0.0254);
      assert.ok(ratio > 1 / dragFactors.linear && ratio < dragFactors.linear, `${mass} kg: ${ratio}`);
    }
  });

  it('area has published ones in its span (NASA 2016 as digitised, AIAA 2019-2873, FAA 2019)', () => {
    for (const [mass, published] of [
      [1.497, 0.0209],
      [1.27, 0.0203],
      [1.5, 0.00881],
      [0.6, 0.0039],
      [0.25, 0.006],
    ] as const) {
      const ratio = published / estimatedDragArea(mass);
      assert.ok(ratio > 1 / dragFactors.area && ratio < dragFactors.area, `${mass} kg: ${ratio}`);
    }
  });
});

describe('there and back in wind (the wind triangle, by hand)', () => {
  it('18 Wh at 125.5 W and 15 m/s: 3.8725 km out in still air, 3.7176, 3.4422, 2.7710 and 1.3941 in 3, 5, 8 and 12 m/s', () => {
    const seconds = (18 * 3600) / 125.5;
    near(seconds, 516.33, 1e-5);
    for (const [wind, kilometres] of [
      [0, 3.8725],
      [3, 3.7176],
      [5, 3.4422],
      [8, 2.771],
      [12, 1.3941],
    ] as const)
      near(reachOutAndBack((15 - wind) * seconds, (15 + wind) * seconds), 1000 * kilometres, 1e-4);
  });

  it('is no way at all against a wind that is as fast', () => {
    assert.equal(reachOutAndBack(0, 5000), 0);
    assert.equal(
      rangeSpeed((speed) => 100 + speed ** 3, 12, 12),
      null,
    );
  });

  it('hovering is least where power only rises, and not where it rises and then falls farther, whatever is guessed', () => {
    for (const guess of [null, 0, 5, 12]) {
      assert.equal(
        enduranceSpeed((speed) => 100 + speed ** 2, 40, guess),
        0,
      );
      // By its derivative: 100 at 0, a little more right behind it, and 90.72 at 12.
      const dip = (speed: number) => 100 + (5 * speed - 10.5 * speed ** 2 + (speed ** 3 * 247) / 432) / 50;
      assert.ok(dip(0.1) > dip(0));
      near(enduranceSpeed(dip, 15, guess), 12, 1e-4);
    }
  });

  it('least values are found where they are: inside, at an end, at an edge, before what is infinite (by hand, from derivatives)', () => {
    const cases: readonly (readonly [measure: (at: number) => number, end: number, least: number])[] = [
      [(at) => (at - 3) ** 2 + 1, 10, 3],
      [(at) => at ** 4 - at, 5, 0.25 ** (1 / 3)],
      [(at) => at, 10, 0],
      [(at) => -at, 10, 10],
      [(at) => Math.abs(at - 2.5), 10, 2.5],
      [(at) => (at > 20 ? Number.POSITIVE_INFINITY : 100 / at + at ** 2 / 10), 40, 500 ** (1 / 3)],
      [(at) => (at > 5 ? Number.POSITIVE_INFINITY : -at), 50, 5],
    ];
    for (const [measure, end, least] of cases)
      assert.ok(Math.abs(leastAt(measure, 0, end) - least) < 2e-5 * end, String(measure));
  });
});
