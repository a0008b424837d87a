import assert from 'node:assert/strict';
import { coreNames } from './core-names';
import { shippedCatalog, shippedData } from './shipped';

/** Names with digits in them that the trade itself writes so. */
const tradeNames = /^(dshot\d+|uart\d|awg-\d+|lifepo4|y6|notch-\d)$/;

function ownNames(): readonly string[] {
  const { bundle } = shippedData();
  const parameters = bundle.parameters.flatMap((file) => file.parameters);
  const words = parameters.flatMap((one) => [
    ...('choices' in one ? (one.choices ?? []) : []),
    ...('orWords' in one ? (one.orWords ?? []) : []),
  ]);
  const members = bundle.collections.flatMap(({ keys }) => (keys.kind === 'closed' ? keys.members : []));
  const { boards, links, signals, chemistries, gauges, grids, bands, regions } = bundle;
  const ports = boards.flatMap((board) => [
    ...(board.hardware?.ports ?? []),
    ...(board.hardware?.rails ?? []),
  ]);
  const rows = [words, members, boards, links, signals, chemistries, gauges, grids, bands, regions, ports];
  return [...parameters.flatMap(({ name }) => name.split('.')), ...rows.flat().map(({ name }) => name)];
}

describe('the data of the catalogue', () => {
  it('is valid, file by file and together', () => {
    assert.deepEqual(shippedData().problems, []);
  });

  it('holds 300 parameters or more', () => {
    assert.ok(shippedCatalog().parameters.size >= 300, `${shippedCatalog().parameters.size} parameters`);
  });

  it('holds every core name', () => {
    assert.deepEqual(
      coreNames.filter((name) => !shippedCatalog().parameters.has(name)),
      [],
    );
  });

  it('has lower-case English names, with digits only where the trade writes them', () => {
    const odd = ownNames().filter((name) => !/^<?[a-z]+(-[a-z]+)*>?$/.test(name) && !tradeNames.test(name));
    assert.deepEqual([...new Set(odd)], []);
  });

  it('names a source wherever it gives a figure', () => {
    const { bundle } = shippedData();
    const { boards, links, signals, chemistries, gauges, grids, bands } = bundle;
    const rows = [boards, links, signals, chemistries, gauges, grids, bands].flat();
    const permits = bundle.regions.flatMap((region) => region.permits);
    const sources = [...rows, ...permits].map((row) => row.source?.text ?? '');
    assert.ok(sources.length > 60);
    const bare = sources.filter((text) => !/memory|practice|assumption|invented|\d|reference/i.test(text));
    assert.deepEqual(bare, []);
  });

  it('says how each parameter can be proved and what it risks, in words of its own', () => {
    const parameters = shippedData().bundle.parameters.flatMap((file) => file.parameters);
    for (const field of ['summary', 'risk', 'prove', 'title'] as const) {
      const texts = parameters.map((one) => one[field]);
      assert.equal(new Set(texts).size, texts.length, field);
    }
  });

  it('never promises that a craft is safe or allowed to fly', () => {
    const text = JSON.stringify(shippedData().bundle);
    assert.deepEqual(text.match(/\b(is|are) (airworthy|legal|perfectly safe|always safe)\b/gi) ?? [], []);
  });
});
