import { strict as assert } from 'node:assert';
import { codeLenses } from '../../../server/src/features/code-lenses';
import { snapshotOf } from '../../support/snapshot';

const pack = (name: string, cells: number) =>
  `[pack.${name}]\nchemistry = lipo\ncells = ${cells}\ncapacity = ${100 * cells} mAh\n`;

describe('what stands above a section', () => {
  it('is what that section comes to: of each pack its own figures, whichever pack is in view', () => {
    const { snapshot } = snapshotOf(`[craft]\nname = "Plover"\n${pack('two', 2)}${pack('three', 3)}`);
    assert.deepEqual(
      codeLenses(snapshot).map(({ pack: tried }) => tried),
      ['two', 'three'],
    );
    const above = new Map(codeLenses(snapshot).map(({ range, figures }) => [range.start.line, figures]));
    // A full LiPo cell has 4.2 V.
    assert.match(above.get(2) ?? '', /\b8\.4 V/);
    assert.match(above.get(6) ?? '', /\b12\.6 V/);
  });
});
