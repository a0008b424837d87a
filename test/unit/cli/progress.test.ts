import { strict as assert } from 'node:assert';
import { Progress } from '../../../server/src/cli/progress';

/** What is said while so many scripts are checked, each of which takes so many ms. */
async function saidOver(count: number, each: number, canShowProgress: boolean): Promise<string> {
  let said = '';
  let clock = 0;
  const err = (text: string) => {
    said += text;
  };
  const progress = new Progress({ err, canShowProgress }, () => clock);
  const scripts = Array.from({ length: count }, (_, index) => index);
  const double = async (script: number) => {
    clock += each;
    return script * 2;
  };
  const doubled = await progress.over(scripts, [double]);
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

  it('is told of several lanes that share the work, and gives what came of it in order', async () => {
    const progress = new Progress({ err: () => {}, canShowProgress: false });
    const taken: string[] = [];
    const lane = (name: string, pauses: number) => async (script: number) => {
      for (let turn = 0; turn < pauses; turn += 1) await Promise.resolve();
      taken.push(name);
      return script * 2;
    };
    const doubled = await progress.over([1, 2, 3, 4, 5, 6], [lane('quick', 1), lane('slow', 12)]);
    assert.deepEqual(doubled, [2, 4, 6, 8, 10, 12]);
    assert.equal(taken.length, 6);
    assert.ok(
      taken.filter((name) => name === 'quick').length > taken.filter((name) => name === 'slow').length,
    );
    assert.ok(taken.includes('slow'));
  });

  it('is not told of a short run', async () => assert.equal(await saidOver(10, 2, true), ''));

  it('is never told where nobody looks on', async () => assert.equal(await saidOver(1000, 10, false), ''));

  it('is gone as well when something fails', async () => {
    let said = '';
    let clock = 0;
    const err = (text: string) => {
      said += text;
    };
    const progress = new Progress({ err, canShowProgress: true }, () => {
      clock += 600;
      return clock;
    });
    await assert.rejects(
      progress.over(
        [1, 2],
        [
          async (script) => {
            if (script === 2) throw new Error('broken');
          },
        ],
      ),
      /broken/,
    );
    assert.ok(said.endsWith('checked\r\u001b[K'), said);
  });
});
