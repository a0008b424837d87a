import { strict as assert } from 'node:assert';
import { scriptTextOf } from '../../../../server/src/board/layer/layer';
import { readLayer } from '../../../../server/src/board/layer/read-layer';
import { checkedBoardText } from '../../../../server/src/cli/report/checked-board-text';
import { checkedScript, mostReported } from '../../../../server/src/cli/report/checked-file';
import { jsonReport } from '../../../../server/src/cli/report/json';
import { textReport } from '../../../../server/src/cli/report/text';
import type { Terminal } from '../../../../server/src/cli/terminal';
import { testCatalog } from '../../../support/catalog';
import { craftOf, findingsOf } from '../../../support/findings';

/** A terminal that swallows what it is told, with neither colour nor width: as a file is. */
const plainTerminal: Terminal = {
  out: async () => {},
  message: () => {},
  show: () => {},
  hasColour: false,
  width: null,
  canShowProgress: false,
  readStandardInput: async () => new Uint8Array(),
};

/** A script with as many unknown names; the last line repeats a section, which is only untidy. */
const around = { pathFor: (uri: string) => uri, layer: () => undefined, catalog: testCatalog };

function checkedWith(faults: number) {
  const text = `[gyro]\n${'wobble = 1\n'.repeat(faults)}[gyro]\n`;
  const craft = craftOf(text);
  return [checkedScript('a.craft', craft, findingsOf(craft), around, true)];
}

const tooMany = checkedWith(mostReported + 2);

function tellsOf(text: string): number {
  return text.split('\n').filter((line) => line.startsWith('a.craft:')).length;
}

describe('a script with very many findings', () => {
  it('is told in full up to the limit', async () => {
    const most = checkedWith(mostReported - 1);
    assert.equal(most[0]?.omitted, 0);
    const text = await textReport(most, testCatalog, plainTerminal);
    assert.equal(tellsOf(text), mostReported);
    assert.doesNotMatch(text, /more findings/);
  });

  it('is told of by its worst findings, with how many more there are', async () => {
    const text = await textReport(tooMany, testCatalog, plainTerminal);
    assert.equal(tellsOf(text), mostReported);
    assert.match(text, /^a\.craft has 3 more findings; the worst 1000 are shown, and all are counted\.$/m);
    assert.match(text, /1002 must-fix, 0 risk, 0 note, 1 tidy/);
  });

  it('is counted in full for programs', () => {
    const [file] = JSON.parse(jsonReport(tooMany, testCatalog)).files;
    assert.equal(file.findings.length, mostReported);
    assert.equal(file.omitted, 3);
    assert.deepEqual(file.counts, { 'must-fix': 1002, risk: 0, note: 0, tidy: 1 });
  });
});

/** Two devices on one port, which must be mended, below as many settings that the board does not know. */
function checkedText(unknown: number) {
  const text = [
    'heron listens.',
    'in radio:',
    ...Array.from({ length: unknown }, (_, index) => `wobble ${index} is 1;`),
    'receiver port is uart2;',
    'in reports:',
    'telemetry port is uart2;',
  ].join('\n');
  const layer = readLayer(text, { catalog: testCatalog, fileName: 'a.boardtext', picked: 'heron' });
  return checkedBoardText(
    'a.boardtext',
    'part',
    layer,
    findingsOf(craftOf(scriptTextOf(layer))),
    testCatalog,
  );
}

describe('a board’s text with very many findings', () => {
  it('is told of by its worst findings too, wherever they stand', () => {
    const { findings, omitted, counts } = checkedText(mostReported + 1);
    assert.ok(counts['must-fix'] >= 1 && counts.note > mostReported, JSON.stringify(counts));
    assert.equal(findings.length, mostReported);
    assert.equal(omitted, Object.values(counts).reduce((sum, count) => sum + count, 0) - mostReported);
    assert.equal(findings.filter(({ level }) => level === 'must-fix').length, counts['must-fix']);
    const lines = findings.map(({ range }) => range.start.line);
    assert.deepEqual(
      lines,
      [...lines].sort((one, other) => one - other),
    );
  });

  it('offers for programs what mends it', () => {
    const { findings } = checkedText(1);
    assert.ok(findings.some(({ fixes }) => fixes.length > 0));
  });
});
