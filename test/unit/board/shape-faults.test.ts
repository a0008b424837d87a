import assert from 'node:assert/strict';
import { LayerReader } from '../../../server/src/board/layer/layer-reader';
import { profileOf } from '../../../server/src/board/profile/profile';
import { problemsOf, workspaceWithBoard } from '../../support/additions';

const text = { forms: { container: 'lines', lines: [{ form: '{name} := {value}' }] } };

/** What is wrong with a profile, as it stands in its file. */
function problems(settings: readonly object[], more: object = {}): readonly (readonly string[])[] {
  const files = workspaceWithBoard('boards/reed.json', { name: 'reed', text, settings, ...more });
  return problemsOf(files, 'boards/reed.json').map(([, marked, message]) => [marked, message]);
}

/** Why values of a text can't be read by a profile. */
function troublesOf(settings: readonly object[], capture: string): readonly string[] {
  const { catalog } = workspaceWithBoard('boards/reed.json', { name: 'reed', text, settings });
  const board = catalog.board('reed');
  const profile = board === undefined ? null : profileOf(board);
  const { lines } = new LayerReader(catalog, profile).read(capture);
  return lines.flatMap(({ trouble }) => trouble?.values.reason ?? []);
}

describe('a profile with several values in a setting', () => {
  const lever = [{ means: 'switch.arm.channel' }, { means: 'switch.arm.on', as: 'low' }, {}];

  it('is told at the value whose meaning is wrong', () => {
    const missing = problems([{ name: 'lever', items: lever }]);
    assert.deepEqual(missing, [['"switch.arm.on"', 'switch.arm.on needs "high" as well']]);
    const unknown = problems([{ name: 'lever', items: [{}, { means: 'switch.arm.lane' }] }]);
    assert.deepEqual(unknown, [['"switch.arm.lane"', 'there is no parameter switch.arm.lane']]);
  });

  it('may have the other end in another setting, and values that nobody knows', () => {
    const rest = { name: 'end', means: 'switch.arm.on', as: 'high' };
    assert.deepEqual(problems([{ name: 'lever', items: lever, between: ', ' }, rest]), []);
  });
});

describe('a profile with steps', () => {
  const withTable = (table: object, more: object = {}) =>
    problems([{ name: 'step', means: 'video.power', counts: { table, ...more } }]);

  it('is told of a step that is no quantity, is said twice, or that the parameter can’t be', () => {
    assert.deepEqual(withTable({ 1: '25 mW', 2: '100 mW' }), []);
    assert.deepEqual(withTable({ 1: '25 mW', 2: '9 Hz' }), [['"9 Hz"', '"9 Hz" is not a power']]);
    assert.deepEqual(withTable({ 1: '25 mW', 2: '25 mW' }), [['"25 mW"', '"1" and "2" are both 25 mW']]);
    assert.deepEqual(withTable({ 1: '90 W' }), [['"90 W"', '90 W is nothing that video.power can be']]);
  });

  it('says nothing else of how it counts', () => {
    assert.deepEqual(withTable({ 1: '25 mW' }, { scale: 10 }), [
      ['10', 'a table of steps says all that is counted'],
    ]);
  });
});

describe('a profile with a setting for each word of a list', () => {
  it('says each word once, that the list has, in one way', () => {
    const has = (word: string) => ({ name: word, means: 'power.alarm', as: { has: word } });
    const numberOf = (word: string) => ({ name: word, means: 'power.alarm', as: { numberOf: word } });
    assert.deepEqual(problems([has('buzzer'), has('overlay')]), []);
    assert.deepEqual(problems([numberOf('buzzer'), numberOf('overlay')]), []);
    assert.deepEqual(problems([has('bell')]), [['{"has":"bell"}', '"bell" is no word of power.alarm']]);
    assert.deepEqual(problems([has('buzzer'), { ...has('buzzer'), name: 'horn' }]), [
      ['"power.alarm"', 'power.alarm is what buzzer means already'],
    ]);
    assert.deepEqual(problems([has('buzzer'), numberOf('overlay')]), [
      ['"power.alarm"', 'power.alarm is held in another way by another setting'],
    ]);
    assert.deepEqual(problems([{ name: 'idle', means: 'motor.idle', as: { has: 'buzzer' } }]), [
      ['{"has":"buzzer"}', 'motor.idle is a quantity: "as" is left out'],
    ]);
  });

  it('is told of numbers that leave a gap, stand there twice or are none', () => {
    const rows = ['gps', 'galileo'].map((word) => ({
      name: word,
      means: 'position.systems',
      as: { numberOf: word },
    }));
    const told = (capture: string) => troublesOf(rows, capture);
    assert.deepEqual(told('gps := 2\ngalileo := 1\n'), []);
    assert.deepEqual(told('gps := 1\ngalileo := 1\n'), ['gps has that number already']);
    assert.deepEqual(told('gps := 1\ngalileo := 3\n'), ['a number from 1 to 2 is wanted']);
    assert.deepEqual(told('gps := some\ngalileo := 1\n'), ['a number from 1 to 2 is wanted']);
  });

  it('is told of what is neither on nor off', () => {
    const rows = ['gps', 'galileo'].map((word) => ({
      name: word,
      means: 'position.systems',
      as: { has: word },
    }));
    assert.deepEqual(troublesOf(rows, 'gps := on\ngalileo := maybe\n'), ['on or off is wanted']);
  });
});

describe('a profile with a setting for each port', () => {
  const ports = (settings: readonly object[], portRoles?: object, more: object = {}) =>
    problems(settings, { ...(portRoles === undefined ? {} : { portRoles }), ...more });
  const roles = { roles: { 'receiver.port': 'rx', 'telemetry.port': 'talk' }, unused: 'free' };

  it('is fine where each port is said once and each word means one thing', () => {
    const both = [
      { name: 'one', port: 'uart1' },
      { name: 'two', port: 'uart2' },
    ];
    assert.deepEqual(ports(both, roles), []);
    assert.deepEqual(ports([...both, { name: 'three', port: 'uart1' }], roles), [
      ['"uart1"', 'the role of uart1 is said by another setting already'],
    ]);
  });

  it('needs the words for roles, and no other meaning', () => {
    assert.deepEqual(ports([{ name: 'one', port: 'uart1' }]), [
      ['"uart1"', '"port" needs "portRoles": what its words mean'],
    ]);
    assert.deepEqual(ports([{ name: 'one', port: 'uart1', means: 'motor.idle' }], roles), [
      ['"uart1"', 'a setting that says the role of a port has no other meaning'],
    ]);
  });

  it('has words for parameters that name a port, each of its own', () => {
    assert.deepEqual(ports([], { roles: { 'motor.idle': 'rx' } }), [['"rx"', 'motor.idle names no port']]);
    const [[, message] = []] = ports([], { roles: { 'receiver.port': 'rx' }, unused: 'rx' });
    assert.equal(message, '"rx" stands for two roles');
  });

  it('has only ports that the board has', () => {
    const hardware = {
      ports: [{ name: 'uart1', directions: ['in'], invertedIn: false, invertedOut: false }],
    };
    assert.deepEqual(ports([{ name: 'two', port: 'uart2' }], roles, { hardware }), [
      ['"uart2"', 'the board has no port uart2: uart1'],
    ]);
  });
});
