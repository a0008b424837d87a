import { strict as assert } from 'node:assert';
import {
  explainEnding,
  explainSection,
  parametersEndingIn,
} from '../../../../server/src/cli/report/explain-lists';
import { testCatalog } from '../../../support/catalog';

describe('explaining several parameters', () => {
  it('lists all of a group with their titles', () => {
    const told = explainSection(testCatalog, 'gyro') ?? '';
    for (const { name, parameter } of testCatalog.groups.get('gyro')?.parameters ?? []) {
      assert.ok(told.includes(name) && told.includes(parameter.title), name);
    }
  });

  it('lists those of a section', () => {
    const told = explainSection(testCatalog, 'gyro.filter.1') ?? '';
    assert.match(told, /gyro\.filter\.<number>\.kind {8}\S/);
    assert.match(told, /gyro\.filter\.<number>\.cutoff {6}\S/);
    assert.doesNotMatch(told, /derivative|full-scale/);
  });

  it('tells the members of a collection under the pilot’s questions', () => {
    const told = explainSection(testCatalog, 'switch') ?? '';
    assert.match(told, /motors\?\n {2}arm +Arm\n {2}permission +\S[^\n]*\n {2}stop-motors +\S[^\n]*\n\nHow/);
    assert.match(told, /switch\.<function>\.channel/);
    const when = explainSection(testCatalog, 'control.when') ?? '';
    assert.match(when, /fast-turn +In a fast turn/);
  });

  it('tells nothing of what is neither', () => {
    assert.equal(explainSection(testCatalog, 'gyro.filter.1.cutoff'), null);
    assert.equal(explainSection(testCatalog, 'wobble'), null);
  });

  it('lists all that end in a word, and in no longer one', () => {
    const names = parametersEndingIn(testCatalog, 'cutoff').map(({ name }) => name);
    assert.deepEqual(names.sort(), ['derivative.filter.<number>.cutoff', 'gyro.filter.<number>.cutoff']);
    assert.deepEqual(parametersEndingIn(testCatalog, 'off'), []);
    const told = explainEnding('cutoff', parametersEndingIn(testCatalog, 'cutoff'));
    for (const name of names) assert.ok(told.includes(name), name);
  });
});
