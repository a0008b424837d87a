import assert from 'node:assert/strict';
import { problemsOf, workspaceWithBoard } from '../../support/additions';

const text = { forms: { container: 'lines', lines: [{ form: '{name} := {value}' }] } };

/** What is wrong with a profile, as it stands in its file. */
function problems(settings: readonly object[], more: object = {}): readonly (readonly string[])[] {
  const files = workspaceWithBoard('boards/reed.json', { name: 'reed', text, settings, ...more });
  return problemsOf(files, 'boards/reed.json').map(([, marked, message]) => [marked, message]);
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
