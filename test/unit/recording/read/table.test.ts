import { strict as assert } from 'node:assert';
import { eachRow, readHead } from '../../../../server/src/recording/read/each-row';
import { RowReader } from '../../../../server/src/recording/read/row-reader';
import { unhurried } from '../../../../server/src/recording/read/source';
import { textSource } from '../../../support/table';

const nan = Number.NaN;

describe('a table of any logger', () => {
  for (const [what, text] of [
    ['commas', 'a,b\n1,2.5\n3,-4\n5,6\n7,8\n'],
    ['semicolons and decimal commas', 'a;b\n1;2,5\n3;-4,0\n5;6,0\n7;8,0\n'],
    ['tabs', 'a\tb\n1\t2.5\n3\t-4\n5\t6\n7\t8\n'],
    ['blanks, several of them', '  a   b\n 1  2.5\n 3   -4\n5 \t6 \n7 8\n'],
    ['line ends of two characters', 'a,b\r\n1,2.5\r\n3,-4\r\n5,6\r\n7,8\r\n'],
    ['line ends of one old character', 'a,b\r1,2.5\r3,-4\r5,6\r7,8\r'],
    ['a mark of its encoding', '\ufeffa,b\n1,2.5\n3,-4\n5,6\n7,8\n'],
    ['quotes', '"a","b"\n"1","2.5"\n"3","-4"\n"5","6"\n"7","8"\n'],
    ['separators at the end of lines', 'a,b,\n1,2.5,\n3,-4, \n5,6,\n7,8,\n'],
    ['separators at the end of rows alone', 'a,b\n1,2.5,\n3,-4, \n5,6,\n7,8,\n'],
    ['comments', '# made here\na,b\n1,2.5\n# in between\n3,-4\n5,6\n7,8\n# end\n'],
    ['headings in a comment', '# a,b\n1,2.5\n3,-4\n5,6\n7,8\n'],
    ['lines above the headings', 'Craft: none\n\na,b\n1,2.5\n3,-4\n5,6\n7,8\n'],
    ['blanks around cells', 'a , b\n 1 , 2.5 \n3, -4\n 5,6\n7 ,8\n'],
    ['empty lines', '\na,b\n\n1,2.5\n3,-4\n\n5,6\n7,8\n\n'],
  ] as const)
    it(`is read with ${what}`, async () => {
      const { columns } = await readHead(textSource(text));
      assert.deepEqual(
        columns.map(({ heading }) => heading),
        ['a', 'b'],
      );
      assert.deepEqual(await allRows(text), [
        [1, 2.5],
        [3, -4],
        [5, 6],
        [7, 8],
      ]);
    });

  it('has text beside its numbers, and cells that say nothing', async () => {
    const text = 'a,note,b\n1,"one, two",nan\n,x,-\n3,,NULL\nn/a,take off,4\n5,"""so""",inf\n';
    assert.deepEqual(await allRows(text), [
      [1, nan, nan],
      [nan, nan, nan],
      [3, nan, nan],
      [nan, nan, 4],
      [5, nan, nan],
    ]);
  });

  it('may have cells at its end that few rows fill, or none', async () => {
    const rows = Array.from({ length: 300 }, (_, row) => {
      const ends = row === 2 ? '7;;take off' : row % 10 === 0 ? '15,1;2;' : ';;';
      return `${row};${row}1;${ends}`;
    });
    const text = `t;x;volts;amps;event\n${rows.join('\n')}\n`;
    const head = await readHead(textSource(text));
    assert.deepEqual(
      head.columns.map(({ heading }) => heading),
      ['t', 'x', 'volts', 'amps', 'event'],
    );
    const read = await allRows(text);
    assert.equal(read.length, 300);
    assert.deepEqual(read[0], [0, 1, 15.1, 2, nan]);
    assert.deepEqual(read[2], [2, 21, 7, nan, nan]);
  });

  it('may hold the time as a clock shows it', async () => {
    const text = 'clock,a\n13:58:59.996,1\n13:59:00.000,2\n0:01.5,3\n:7,4\n1:,5\n';
    const read = await allRows(text);
    assert.deepEqual(
      read.map(([time]) => time),
      [50_339.996, 50_340, 1.5, nan, nan],
    );
    assert.deepEqual(
      (await allRows('clock;a\n0:00:01.5;1,5\n0:00:02,5;2,5\n0:00:03.5;3,5\n'))[0],
      [1.5, 1.5],
    );
  });

  it('may hold vectors in cells, in brackets or in quotes with them', async () => {
    for (const cells of ['"[1, 2, 3]"', '[1 2 3]', '"(1; 2; 3)"']) {
      const text = `t,w\n${[1, 2, 3, 4].map((time) => `${time},${cells}\n`).join('')}`;
      const { columns } = await readHead(textSource(text));
      assert.deepEqual(
        columns.map(({ heading }) => heading),
        ['t', 'w[0]', 'w[1]', 'w[2]'],
        cells,
      );
      assert.deepEqual((await allRows(text))[3], [4, 1, 2, 3], cells);
    }
  });

  for (const [what, text, headings] of [
    ['that come again', 'x,y,x,y\n1,2,3,4\n1,2,3,4\n', ['x', 'y', 'x (2)', 'y (2)']],
    ['with units in brackets', 't [s],w (rad/s)\n1,2\n3,4\n', ['t [s]', 'w (rad/s)']],
    ['with a line of units below', 't,w\ns,rad/s\n1,2\n3,4\n', ['t [s]', 'w [rad/s]']],
    ['some of which are missing', 'a,,c\n1,2,3\n1,2,3\n', ['a', 'column 2', 'c']],
    ['of which there are none', '1,2\n3,4\n5,6\n', ['column 1', 'column 2']],
    ['with blanks in them', 'ang vel x,ang vel y\n1,2\n3,4\n', ['ang vel x', 'ang vel y']],
    ['fewer than columns', 'a,b\n1,2,3\n1,2,3\n', ['column 1', 'column 2', 'column 3']],
    ['in the encoding of one country', null, ['w [°/s]', 'b']],
  ] as const)
    it(`has headings ${what}`, async () => {
      const source =
        text === null
          ? {
              name: 'old.csv',
              size: null,
              bytes: () => once(Buffer.from('w [\u00b0/s],b\n1,2\n3,4\n', 'latin1')),
            }
          : textSource(text);
      const { columns } = await readHead(source);
      assert.deepEqual(
        columns.map(({ heading }) => heading),
        headings,
      );
    });

  it('says that headings fit no cells, and what above them was not read', async () => {
    assert.match(
      (await readHead(textSource('a,b\n1,2,3\n1,2,3\n'))).remarks[0] ?? '',
      /^There are 2 headings above rows of 3 cells/,
    );
    assert.deepEqual((await readHead(textSource('Craft: none\na,b\n1,2\n3,4\n'))).remarks, [
      'A line above the headings: not read.',
    ]);
  });
});

async function* once(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}

/** All rows as numbers; the bytes come a few at a time, so that every cell is cut somewhere. */
async function allRows(text: string): Promise<readonly (readonly number[])[]> {
  const source = textSource(text, 5);
  const head = await readHead(source);
  const reader = new RowReader(
    head.dialect,
    head.columns.map(({ cell, part }) => ({ cell, part, isStamp: false })),
  );
  const rows: number[][] = [];
  await eachRow(source, head, reader, unhurried, { take: () => rows.push([...reader.row]) > 0 });
  return rows;
}
