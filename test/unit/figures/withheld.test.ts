import assert from 'node:assert/strict';
import { answerTo, withheldOf } from '../../support/answers';
import { wholeCraft } from '../../support/whole-craft';

describe('a figure that is withheld', () => {
  it('appears as well once what may stand in place of it is written', () => {
    const lines = wholeCraft.filter((line) => !/^motor\.(resistance|idle-current)/.test(line));
    const hover = withheldOf(lines).get('hover-throttle');
    assert.deepEqual(hover?.needs, ['motor.stator-diameter', 'motor.stator-height']);
    assert.equal(hover.instead.length, 3);
    for (const { of, write } of hover.instead) {
      assert.deepEqual(of, hover.needs);
      assert.equal(withheldOf([...lines, ...write.map(answerTo)]).get('hover-throttle'), undefined);
    }
  });

  it('leads to all of them, asked again and again', () => {
    let lines = wholeCraft.filter((line) => /^(craft|video|record)\.|^pack\.one\.cells/.test(line));
    for (let round = 0; round < 8; round += 1) {
      const needs = new Set([...withheldOf(lines).values()].flatMap((one) => one.needs));
      if (needs.size === 0) break;
      lines = [...lines, ...[...needs].map(answerTo)];
    }
    assert.deepEqual([...withheldOf(lines).values()], []);
  });
});
