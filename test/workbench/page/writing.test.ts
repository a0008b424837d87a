import { strict as assert } from 'node:assert';
import { oneWindow } from './one-window';

const text = [
  '[arming]',
  'tilt-limt = 60 deg',
  '',
  'gyro.filter.1.cutoff = 120 Hz',
  'x = -0.25',
  'x = 1.5e-3',
  'x = 20 µs',
  'x = 3 m/s',
  '',
].join('\n');

describe('a script that a person writes', () => {
  const editor = oneWindow({ files: { 'words.craft': text, 'typed.craft': '\n' }, goesOn: true });

  describe('selects by a double click (G09)', () => {
    for (const [under, word] of [
      ['filter', 'gyro.filter.1.cutoff'],
      ['25', '-0.25'],
      ['5e', '1.5e-3'],
      ['µ', 'µs'],
      ['m/s', 'm/s'],
    ] as const) {
      it(`${word} as one word`, async () => {
        await editor().openFile('words.craft');
        await editor().doubleClick(under);
        // The status bar counts what is selected.
        await editor().statusBar(new RegExp(`\\(${word.length} selected\\)`));
      });
    }
  });

  it('has a mistyped name underlined, told in its hover, and mended by the first fix', async () => {
    await editor().openFile('words.craft');
    await editor().waitForSquiggles('error');
    assert.match(await editor().hoverOver('tilt-limt'), /tilt-limit/);
    await editor().goTo(2, 3);
    const [first = ''] = await editor().quickFixes();
    assert.match(first, /tilt-limit/);
    await editor().press('Enter');
    await editor().waitForText('tilt-limit = 60 deg');
    await editor().press('Control+Z');
    await editor().waitForText('tilt-limt = 60 deg');
  });

  describe('is completed', () => {
    beforeEach(async () => {
      await editor().openFile('typed.craft');
      await editor().press('Control+A');
      await editor().press('Delete');
    });

    for (const [where, typed, left, accepted] of [
      ['in a hyphenated name, with nothing doubled (G01)', '[arming]\ntilt-l', '', 'tilt-limit'],
      ['in a dotted name, with nothing doubled (G02)', 'gyro.filter.1.cut', '', 'gyro.filter.1.cutoff'],
      [
        'in front of a value, which stays (G02)',
        'gyro.filter.1.cut = 120 Hz',
        ' = 120 Hz',
        'gyro.filter.1.cutoff = 120 Hz',
      ],
    ] as const) {
      it(where, async () => {
        await editor().type(typed);
        await editor().press('Escape');
        for (const _ of left) await editor().press('ArrowLeft');
        await editor().suggestions();
        await editor().press('Enter');
        await editor().press('Escape');
        // Lines on screen are drawn anew one by one, so each look takes one reading.
        await editor().waitUntil(`a last line with ${accepted}, once`, async () => {
          const last = (await editor().visibleText()).trimEnd().split('\n').at(-1) ?? '';
          return last.startsWith(accepted) && last.match(/cutoff|limit/g)?.length === 1;
        });
      });
    }

    for (const [typed, left, label, expected] of [
      ['gyro.rate = 6.4 kHz', '6.4 kHz', '8 kHz', 'gyro.rate = 8 kHz'],
      ['switch.arm.on = 1600..2000 us', '1600..2000 us', '1750..2050 us', 'switch.arm.on = 1750..2050 us'],
      [
        'arming.needs = [gyro-still, receiver-alive]',
        'gyro-still, receiver-alive]',
        'position-fix',
        'arming.needs = [position-fix, receiver-alive]',
      ],
      ['signal-loss.action = descend', 'descend', 'hover', 'signal-loss.action = hover'],
    ] as const) {
      for (const mode of ['insert', 'replace'] as const) {
        it(`in front of what is there, which it replaces, when the editor is to ${mode}: ${expected}`, async () => {
          editor().changeSettings({ 'editor.suggest.insertMode': mode });
          await editor().type(typed);
          await editor().press('Escape');
          for (const _ of left) await editor().press('ArrowLeft');
          await editor().acceptSuggestion(label);
          await editor().waitUntil(
            expected,
            async () => (await editor().visibleText()).trimEnd() === expected,
          );
        });
      }
    }
  });
});
