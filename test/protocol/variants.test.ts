import assert from 'node:assert/strict';
import { propsoff } from '../support/command-line';

const bittern = 'test/demo/bittern.craft';
const sandmartin = 'test/demo/sandmartin.craft';

describe('with and without, on the command line', () => {
  it('tells what the camera costs, what a pilot asks first before the rest', () => {
    const { stdout, status } = propsoff(['compare', bittern, '--without', 'payload']);
    assert.equal(status, 0);
    assert.match(stdout, /craft\.payload: 35 g → 0 g/);
    assert.match(
      stdout,
      /What matters most\n {2}Hovering time until landing: .* min \(.*–.*\) → .* min \(.*–.*\), better\n/,
    );
  });

  it('tells it of a camera that is only thought of, and of winter with it', () => {
    const { stdout } = propsoff(['sheet', sandmartin, '--if', 'craft.payload = 90 g', '--cold']);
    assert.match(stdout, /Which pack does what\?/);
    // Below the names of two packs it would seem to be of the first.
    assert.match(stdout, /^ {2}Rate at full stick: yaw {2,}\d+ deg\/s with every pack$/m);
    assert.match(stdout, /craft\.payload: 0 g \(not set\) → 90 g/);
    assert.match(stdout, /craft\.air-temperature: 15 degC \(not set\) → 0 degC/);
    assert.match(stdout, /Hovering time until landing: .*, worse/);
    const { otherwise } = JSON.parse(propsoff(['sheet', bittern, '--cold', '--json']).stdout);
    assert.equal(otherwise.matters[0].figure.id, 'minutes-to-landing');
    assert.equal(otherwise.settings[0].path, 'craft.air-temperature');
  });

  it('says what it can not show', () => {
    for (const [args, said] of [
      [['compare', sandmartin, '--without', 'payload'], /carries no craft\.payload: --if/],
      [['compare', bittern, '--without', 'wings'], /--without takes payload/],
      [['compare', bittern, '--if', 'craft.payload'], /--if takes a line such as/],
      [['compare', bittern, '--if', 'craft.wings = 2'], /there is no setting craft\.wings/],
      [['compare', bittern, sandmartin, '--cold'], /take one script and one pack/],
      [
        ['sheet', bittern, '--if', 'craft.air-temperature = -4 degC', '--without', 'x'],
        /--without takes payload/,
      ],
    ] as const) {
      const { stderr, status } = propsoff(args);
      assert.match(stderr, said);
      assert.equal(status, 2, args.join(' '));
    }
  });
});
