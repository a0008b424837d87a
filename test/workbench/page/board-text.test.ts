import { strict as assert } from 'node:assert';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { boardOf } from '../../support/listing-shapes/generate';
import type { PrintedListing, TrueSetting } from '../../support/listing-shapes/listing';
import { printed } from '../../support/listing-shapes/print';
import type { ShapeName } from '../../support/listing-shapes/shapes';
import { oneWindow } from './one-window';

/** Listings of boards that nobody has heard of. */
const shapes: readonly ShapeName[] = ['stated', 'brackets', 'paths'];

const draws = Array.from({ length: 12 }, (_, index) => ({ look: index * 7, group: index, seed: index * 31 }));

describe('any board’s text, from paste to proof', () => {
  const editor = oneWindow();
  const clipboard = () => editor().page.evaluate<string>('navigator.clipboard.readText()');
  const copy = (text: string) =>
    editor().page.evaluate(`navigator.clipboard.writeText(${JSON.stringify(text)})`);
  const notified = (text: string) =>
    editor().page.locator('.notification-toast', { hasText: text }).first().waitFor();

  /** Pastes a text as a pilot does, into a new file, and makes it a board's text. */
  async function used(text: string): Promise<void> {
    await editor().runCommand('File: New Untitled Text File');
    await copy(text);
    await editor().press('Control+V');
    await editor().runCommand('Propsoff: Use as Board Text');
  }

  async function outlined(name: string): Promise<void> {
    await editor().runCommand('Explorer: Focus on Outline View');
    const outline = editor().page.locator('.outline-pane, .outline-tree').first();
    await outline.locator('.monaco-list-row', { hasText: name }).first().waitFor();
    await editor().focusEditor();
  }

  /** Types behind a place in place of what stands right before it; line and column count from 1. */
  async function retyped(line: number, column: number, gone: number, text: string): Promise<void> {
    await editor().goTo(line, column);
    for (let count = 0; count < gone; count += 1) await editor().press('Backspace');
    await editor().type(text);
  }

  /** The text goes to the clipboard, and what the board is then said to print is held against it. */
  async function proved(made: RegExp, printedBack: (text: string) => string, verdict: string): Promise<void> {
    await editor().runCommand('Propsoff: Copy Text for the Board');
    await notified('settings for');
    const text = await clipboard();
    assert.match(text, made);
    await copy(printedBack(text));
    await editor().runCommand('Propsoff: Compare with Captured Text');
    await editor()
      .page.locator('.quick-input-list .monaco-list-row', { hasText: 'clipboard' })
      .first()
      .click();
    await notified(verdict);
  }

  for (const shape of shapes)
    it(`goes round with no meaning confirmed: ${shape}`, async () => {
      const listing = printed(boardOf({ shape, choices: 3, style: 0, dirt: [], draws }));
      const [first, changed] = [listing.settings[1], numberIn(listing)];
      assert.ok(first !== undefined && changed?.at.value != null);
      await used(listing.text);
      await notified(`${listing.settings.length} settings in`);
      await outlined(first.groups[0] ?? first.name);
      assert.match(await editor().hoverOver(first.name), /nobody has said what it means/);

      await retyped(first.line + 1, columnOf(listing, first.at.name.end), 0, 'q');
      await editor().waitForSquiggles('warning');
      await editor().takeFix(`Write ${first.name}`);
      await editor().waitForNoSquiggles('warning');

      const value = changed.value.text;
      const other = value.slice(0, -1) + (value.endsWith('7') ? '6' : '7');
      await retyped(changed.line + 1, columnOf(listing, changed.at.value.end), 1, other.slice(-1));
      await editor().press('Control+S');
      const isThere = new RegExp(`${changed.name}.*${other.replace('.', '\\.')}`);
      await proved(
        isThere,
        (text) => text.replace(other, value),
        `${listing.settings.length - 1} settings equal, 1 different,`,
      );
    });

  it('is taught a line, explained, kept in a profile, and told how the board takes a setting', async () => {
    const lines = [
      '== calm ==',
      'first-cut ~> 225 (from 50 to 400)',
      'beeper ~~ loud',
      'slope ~> steep (one of gentle, steep)',
      '== wake ==',
      'spin-up ~> 6',
      'horn-delay ~> 40',
    ];
    await used(`${lines.join('\n')}\n`);
    await notified('one line was not understood.');
    assert.ok(readdirSync(join(editor().folder, 'boards')).some((name) => name.startsWith('board')));
    assert.match(await editor().hoverOver('first-cut'), /50 to 400/);

    await editor().goTo(3, 3);
    await editor().takeFix('This is a setting');
    await notified('Line 3 is a setting.');
    assert.match(await editor().hoverOver('beeper'), /nobody has said what it means/);

    await editor().runCommand('Propsoff: Copy Text for the Board');
    await notified('nobody has said how it is told a setting');
    await editor().page.locator('.notification-toast .monaco-button', { hasText: 'Say How' }).click();
    await editor().page.locator('.quick-input-widget:visible input[type=text]').fill('tell wake spin-up 6');
    await editor().press('Enter');
    await notified('5 settings for');
    assert.match(await clipboard(), /^tell wake horn-delay 40$/m);
  });
});

/** A setting of a plain number that the listing leaves free. */
function numberIn({ settings }: PrintedListing): TrueSetting | undefined {
  return settings.find(
    ({ value, stated }) =>
      (stated === null || (stated.range === null && stated.words === null)) &&
      value.unit === null &&
      /^-?[1-9]\d*(\.\d+)?$/.test(value.text),
  );
}

/** The column of a place in its line, from 1. */
function columnOf({ text }: PrintedListing, place: number): number {
  return place - text.lastIndexOf('\n', place - 1);
}
