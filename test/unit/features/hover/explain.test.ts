import assert from 'node:assert/strict';
import { explainCheck, explainLine, explainParameter } from '../../../../server/src/features/hover/explain';
import { plainText } from '../../../../server/src/features/markdown';
import { testCatalog } from '../../../support/catalog';
import { snapshotOf } from '../../../support/snapshot';

function lineStory(text: string, line: number): string {
  return plainText(explainLine(snapshotOf(text).snapshot, { line, character: 0 }) ?? '');
}

function checkStory(id: string): string {
  return plainText(explainCheck(testCatalog, id) ?? '');
}

describe('the story of a check', () => {
  it('of data tells its conditions, names the values, how to prove it and what to try', () => {
    const story = checkStory('power/warn-below-land');
    for (const part of [
      /^The warning comes before the landing voltage · power\/warn-below-land · must-fix/,
      /Says: The warning comes at <power\.warn-cell> a cell, and landing is due at <power\.land-cell>/,
      /Rule: It is raised when power\.warn-cell <= power\.land-cell\./,
      /Prove it: Hover low/,
      /Try: Warn at <power\.land-cell \+ 0\.2 V>\./,
      /Source: common practice\./,
    ])
      assert.match(story, part);
  });

  it('of code tells the formula that it follows', () => {
    assert.match(
      checkStory('power/divider-overflow'),
      /Rule: Voltage at the converter: full pack x lower \/ \(upper \+ lower\)/,
    );
  });

  it('says for each of which it is looked at', () => {
    assert.match(checkStory('power/cells-missing'), /for each of pack\./);
  });

  it('is none for an id that there is not', () => assert.equal(explainCheck(testCatalog, 'a/b'), null));
});

describe('the story of a line', () => {
  const packs = '[power]\nwarn-cell = 3.3 V\nland-cell = 3.4 V\n';

  it('begins with what was found there, the rule and the numbers here', () => {
    const story = lineStory(packs, 1);
    for (const part of [
      /^must-fix · power\/warn-below-land/,
      /The warning comes at 3\.3 V a cell, and landing is due at 3\.4 V/,
      /Rule: It is raised when power\.warn-cell <= power\.land-cell\./,
      /- power\.warn-cell: 3\.3 V\n- power\.land-cell: 3\.4 V/,
      /Try: Warn at 3\.6 V\./,
    ])
      assert.match(story, part);
  });

  it('goes on with its setting: what it does, what it risks, how to prove it', () => {
    assert.match(
      lineStory(packs, 1),
      /Source: common practice\.\n[\s\S]*power\.warn-cell[\s\S]*Risk:[\s\S]*Prove it:/,
    );
  });

  it('tells a computed figure with its formula', () => {
    const story = lineStory('esc.signal = dshot150\ncontrol.rate = 8 kHz\n', 0);
    assert.match(story, /turn\/signal-longer-than-period/);
    assert.match(story, /Least time between two motor commands: 1\d\d(\.\d+)? us = 16 bits \/ 150 kbit\/s/);
    assert.match(story, /One round of the control loop: 125 us = 1 \/ 8 kHz/);
  });

  it('of a rule in code tells the rule in words', () => {
    assert.match(
      lineStory('switch.arm.channel = 5\nswitch.arm.on = 900..1400 us\n', 1),
      /Rule: The rest position is/,
    );
  });

  it('is that of the section on a header, and none on an empty line', () => {
    assert.match(lineStory('[gyro]\n\n', 0), /gyro/i);
    assert.equal(explainLine(snapshotOf('[gyro]\n\n').snapshot, { line: 1, character: 0 }), null);
  });
});

describe('the story of a setting', () => {
  it('is told by its catalogue name and by a path of a script', () => {
    const known = explainParameter(testCatalog, 'pack.<name>.cells');
    assert.ok(known);
    assert.equal(explainParameter(testCatalog, 'pack.sprint.cells'), known);
    assert.equal(explainParameter(testCatalog, 'pack.sprint.sells'), null);
  });
});
