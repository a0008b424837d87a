import { strict as assert } from 'node:assert';
import { Progress } from '../../../../server/src/cli/report/progress';

/** What is said while so many scripts are checked, each of which takes so many ms. */
async function saidOver(count: number, each: number, canShowProgress: boolean): Promise<string> {
  let said = '';
  let clock = 0;
  const show = (text: string) => {
    said += text;
  };
  const progress = new Progress({ show, canShowProgress }, () => clock);
  const scripts = Array.from({ length: count }, (_, index) => index);
  const doubled = await progress.over(scripts, async (script) => {
    clock += each;
    return script * 2;
  });
  assert.deepEqual(
    doubled,
    scripts.map((script) => script * 2),
  );
  return said;
}

describe('the progress of a long run', () => {
  it('is told now and then over one line, which is gone in the end', async () => {
    const said = await saidOver(1000, 2, true);
    const lines = said.split('\r\u001b[K');
    assert.deepEqual(lines.slice(0, 3), ['', '250 of 1000 scripts checked', '300 of 1000 scripts checked']);
    assert.equal(lines.at(-1), '');
    assert.equal(lines.length, 1 + 15 + 1);
  });

  it('is not told of a short run', async () => assert.equal(await saidOver(10, 2, true), ''));

  it('is never told where nobody looks on', async () => assert.equal(await saidOver(1000, 10, false), ''));

  it('is gone as well when something fails', async () => {
    let said = '';
    let clock = 0;
    const show = (text: string) => {
      said += text;
    };
    const progress = new Progress({ show, canShowProgress: true }, () => {
      clock += 600;
      return clock;
    });
    await assert.rejects(
      progress.over([1, 2], async (script) => {
        if (script === 2) throw new Error('broken');
      }),
      /broken/,
    );
    assert.ok(said.endsWith('checked\r\u001b[K'), said);
  });
});
