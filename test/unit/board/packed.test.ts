import assert from 'node:assert/strict';
import { LayerReader } from '../../../server/src/board/layer/layer-reader';
import { boardCompletion } from '../../../server/src/features/board/completion';
import { boardEdits } from '../../../server/src/features/board/edits';
import { boardHover } from '../../../server/src/features/board/hover';
import { plainText } from '../../../server/src/features/markdown';
import { confirmed } from '../../support/confirmed';
import { Way } from '../../support/listing-shapes/way';
import { snapshotOfView } from '../../support/snapshot';

const text = 'bell = 5\nhabits = 0x15\nlever = 5, 1750, 2100\npace = 7\n';
const way = new Way(
  text,
  confirmed([
    'bell=power.alarm bit 0 has overlay',
    'bell=power.alarm bit 1 has buzzer',
    'habits=arming.beep bit 0',
    'habits=power.alarm bit 3 has lights',
    'lever=switch.arm.channel value 1',
    'lever=switch.arm.on value 2 part low plain',
    'lever=switch.arm.on value 3 part high plain',
  ]),
);

async function opened() {
  const { view } = await way.including();
  return { view, layer: new LayerReader(view.catalog, way.profile).read(text) };
}

/** The text after a line of the script that it comes to has another value. */
async function edited(path: string, value: string): Promise<string> {
  const { view, layer } = await opened();
  const line = layer.lines.findIndex(({ script }) => script.startsWith(`${path} = `));
  const end = layer.lines[line]?.script.length ?? 0;
  const range = { start: { line, character: path.length + 3 }, end: { line, character: end } };
  const edits = boardEdits(layer, view.catalog, [{ range, newText: value }]) ?? assert.fail('no edits');
  return [...edits]
    .sort((one, other) => other.range.start.line - one.range.start.line)
    .reduce(
      (lines, { range: { start, end: last }, newText }) => {
        const before = lines[start.line] ?? '';
        return lines.with(
          start.line,
          before.slice(0, start.character) + newText + before.slice(last.character),
        );
      },
      text.split('\n') as readonly string[],
    )
    .join('\n');
}

describe('a number of which each binary digit says on or off', () => {
  it('is edited as a number, whichever of its digits change', async () => {
    assert.equal(await edited('arming.beep', 'off'), text.replace('0x15', '0x14'));
    assert.equal(
      await edited('power.alarm', '[buzzer, lights]'),
      text.replace('bell = 5', 'bell = 6').replace('0x15', '0x1d'),
    );
  });

  it('tells of each digit under the cursor', async () => {
    const { view, layer } = await opened();
    const snapshot = snapshotOfView(view);
    const place = { line: 0, character: 7 };
    assert.equal(
      plainText(boardHover(layer, snapshot, place, place)?.markdown ?? ''),
      [
        'bell',
        'Here: 5',
        [
          '- bit 0 is 1: power.alarm has overlay',
          '- bit 1 is 0: power.alarm has buzzer',
          '- bit 2 is 1: nobody has said what it means',
        ].join('\n'),
      ].join('\n\n'),
    );
  });

  it('has no words to complete it with', async () => {
    const { view, layer } = await opened();
    assert.deepEqual(boardCompletion(layer, view.catalog, { line: 0, character: 8 }), []);
  });
});

describe('a setting with several values', () => {
  it('is edited at the value that changes', async () => {
    assert.equal(await edited('switch.arm.channel', '6'), text.replace('= 5, 1750', '= 6, 1750'));
    assert.equal(await edited('switch.arm.on', '1800..2100 us'), text.replace('1750', '1800'));
  });
});
