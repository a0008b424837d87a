import { motorPlaces } from '../../../figures/layouts';
import type { CodeRule } from '../../rule';

const tooFewOutputs: CodeRule = {
  ids: ['wire/too-few-motor-outputs'],
  scope: 'craft',
  check(view, report) {
    const { motorOutputs: outputs } = view.hardware;
    const motors = motorPlaces(view.word('craft.layout') ?? '')?.length;
    if (outputs === undefined || motors === undefined || motors <= outputs) return;
    const values = {
      layout: view.shown('craft.layout'),
      motors: String(motors),
      board: view.boardTitle,
      outputs: String(outputs),
    };
    const related = [{ at: 'board.profile', message: `${view.boardTitle} has ${outputs} outputs.` }];
    report({ id: 'wire/too-few-motor-outputs', at: 'craft.layout', values, related });
  },
};

const sensorNotFitted: CodeRule = {
  ids: ['wire/sensor-not-on-board'],
  scope: 'craft',
  check(view, report) {
    const { sensors } = view.hardware;
    if (sensors === undefined) return;
    for (const sensor of ['barometer', 'compass'] as const) {
      const at = `board.${sensor}`;
      if (view.flag(at) !== true || sensors.includes(sensor)) continue;
      const fixes = [{ title: 'Turn the {sensor} off', values: { sensor }, set: at, to: 'off' }];
      report({ id: 'wire/sensor-not-on-board', at, values: { sensor, board: view.boardTitle }, fixes });
    }
  },
};

/** Telemetry without a port, unless the receiver's own line brings it. */
const telemetryPortMissing: CodeRule = {
  ids: ['wire/telemetry-port-missing'],
  scope: 'craft',
  whole: true,
  check(view, report) {
    const link = view.catalog.link(view.word('telemetry.link') ?? '');
    if (link === undefined || !view.isMissing('telemetry.port')) return;
    if (link.directions === 'both' && view.word('receiver.link') === link.name) return;
    report({ id: 'wire/telemetry-port-missing', at: 'telemetry.link', values: { link: link.name } });
  },
};

export const boardPartRules: readonly CodeRule[] = [tooFewOutputs, sensorNotFitted, telemetryPortMissing];
