import assert from 'node:assert/strict';
import { suggestParameters } from '../../../server/src/catalog/suggest';
import { completion } from '../../../server/src/features/completion/completion';
import type { CompletionItem } from '../../../server/src/features/completion/item';
import { snapshotOf } from '../../support/snapshot';
import { shippedCatalog } from './shipped';

/** What people in the trade say for a thing, in plain words, and the setting that they mean. */
const said: readonly (readonly [words: string, parameter: string])[] = [
  ['propeller size', 'prop.diameter'],
  ['prop size', 'prop.diameter'],
  ['propeller pitch', 'prop.pitch'],
  ['number of blades', 'prop.blades'],
  ['battery cells', 'pack.<name>.cells'],
  ['cell count', 'pack.<name>.cells'],
  ['battery capacity', 'pack.<name>.capacity'],
  ['battery weight', 'pack.<name>.mass'],
  ['c rating', 'pack.<name>.discharge'],
  ['battery type', 'pack.<name>.chemistry'],
  ['internal resistance', 'pack.<name>.resistance'],
  ['weight', 'craft.mass'],
  ['dry weight', 'craft.mass'],
  ['take-off weight', 'craft.mass'],
  ['wheelbase', 'craft.motor-spacing'],
  ['diagonal', 'craft.motor-spacing'],
  ['frame', 'craft.layout'],
  ['frame type', 'craft.layout'],
  ['callsign', 'rules.call-sign'],
  ['motor direction', 'motor.spin'],
  ['props in', 'motor.spin'],
  ['rotation', 'motor.spin'],
  ['motor numbers', 'motor.order'],
  ['motor kv', 'motor.kv'],
  ['magnets', 'motor.poles'],
  ['winding resistance', 'motor.resistance'],
  ['no load current', 'motor.idle-current'],
  ['ticking over', 'motor.idle'],
  ['spool-up', 'motor.response-time'],
  ['esc protocol', 'esc.signal'],
  ['bidirectional', 'esc.speed-feedback'],
  ['rpm telemetry', 'esc.speed-feedback'],
  ['timing', 'esc.drive.advance'],
  ['pwm frequency', 'esc.drive.switching-rate'],
  ['motor beeps', 'esc.beep-strength'],
  ['rx', 'receiver.link'],
  ['receiver protocol', 'receiver.link'],
  ['receiver port', 'receiver.port'],
  ['receiver wire', 'receiver.port'],
  ['channel order', 'receiver.order'],
  ['inverted signal', 'receiver.inverted'],
  ['failsafe', 'signal-loss.action'],
  ['throttle while it sinks', 'signal-loss.throttle'],
  ['time until it acts', 'signal-loss.hold'],
  ['return to home', 'signal-loss.action'],
  ['aux channel', 'switch.<function>.channel'],
  ['switch range', 'switch.<function>.on'],
  ['on range', 'switch.<function>.on'],
  ['rates', 'stick.roll.curve'],
  ['expo', 'stick.roll.curve'],
  ['stick mode', 'stick.layout'],
  ['throttle curve', 'stick.throttle.curve'],
  ['camera angle', 'stick.camera-tilt'],
  ['uptilt', 'stick.camera-tilt'],
  ['loop rate', 'control.rate'],
  ['loop frequency', 'control.rate'],
  ['sampling rate', 'gyro.rate'],
  ['gyro filter', 'gyro.filter.<number>.kind'],
  ['lowpass', 'gyro.filter.<number>.cutoff'],
  ['notch', 'gyro.filter.<number>.centre'],
  ['derivative filter', 'derivative.filter.<number>.kind'],
  ['p gain', 'control.roll.proportional'],
  ['i gain', 'control.roll.integral'],
  ['d gain', 'control.roll.derivative'],
  ['feed forward', 'control.roll.feedforward'],
  ['low voltage warning', 'power.warn-cell'],
  ['battery warning', 'power.warn-cell'],
  ['landing voltage', 'power.land-cell'],
  ['current sensor', 'power.current-measure'],
  ['shunt', 'power.current-scale'],
  ['voltage divider', 'power.divider-upper'],
  ['vtx power', 'video.power'],
  ['transmit power', 'video.power'],
  ['video channel', 'video.channel'],
  ['frequency', 'video.frequency'],
  ['aerial', 'video.antenna-gain'],
  ['picture standard', 'video.standard'],
  ['goggles text', 'overlay.<element>.place'],
  ['beeper', 'find.device'],
  ['buzzer', 'find.device'],
  ['lost model alarm', 'find.on'],
  ['log rate', 'record.rate'],
  ['memory card', 'record.medium'],
  ['gps port', 'position.port'],
  ['gps rate', 'position.interval'],
  ['home point', 'position.home-is'],
  ['satellites', 'position.fix-minimum'],
  ['hard knock', 'recovery.after-impact'],
  ['steepest angle', 'level.tilt-limit'],
  ['country', 'rules.region'],
  ['licence', 'rules.licence'],
  ['ham', 'rules.licence'],
  ['board', 'board.profile'],
  ['flight controller', 'board.profile'],
  ['board rotation', 'board.mount-yaw'],
  ['altitude', 'craft.field-elevation'],
  ['temperature', 'craft.air-temperature'],
  ['wire size', 'wire.<device>.gauge'],
  ['awg', 'wire.<device>.gauge'],
  ['capacitor', 'wire.<device>.smoothing'],
];

/** Whether an editor keeps an item while this is typed: its letters stand in it in this order. */
function isKept({ label, filterText = label }: CompletionItem, typed: string): boolean {
  let found = 0;
  for (const letter of filterText.toLowerCase()) if (letter === typed[found]) found += 1;
  return found === typed.length;
}

/** Whether accepting an item writes the parameter's name or opens its section. */
function leadsTo({ label }: CompletionItem, parameter: string): boolean {
  const open = parameter.replace(/\.?<.*$/, '');
  const section = open === parameter ? parameter.slice(0, parameter.lastIndexOf('.')) : open;
  return label.startsWith(`[${section}`) || label.startsWith(open);
}

describe('what people say for a thing', () => {
  for (const [words, parameter] of said) {
    it(`${words} leads to ${parameter}`, () => {
      const found = suggestParameters(shippedCatalog(), words.replaceAll(' ', '-'), '');
      assert.ok(
        found.some(({ known }) => known.name === parameter),
        found.map(({ path }) => path).join(', '),
      );
    });
  }

  for (const [words, parameter] of said) {
    it(`${words}, typed at the top of a script, brings up ${parameter} or its section`, () => {
      const typed = words.replaceAll(' ', '-').toLowerCase();
      const { snapshot, position } = snapshotOf(`${typed}|`);
      const kept = completion(snapshot, position, { snippets: false, trigger: null }).items.filter((item) =>
        isKept(item, typed),
      );
      assert.ok(
        kept.some((item) => leadsTo(item, parameter)),
        kept.map(({ label, detail }) => `${label} ${detail ?? ''}`).join(', '),
      );
    });
  }

  it('is known for eighty things and more', () => assert.ok(said.length >= 80));
});
