import { strict as assert } from 'node:assert';
import type { DataCheck } from '../../../../server/src/catalog/model/check';
import { adviceOf, fixTitle, messageOf, relatedText } from '../../../../server/src/checks/report/render';
import { findingAsData } from '../../../support/craft-as-data';
import { catalogWith, OwnCraft, ruleOf } from '../../../support/own-checks';

function craftWith(text: string, ...checks: readonly DataCheck[]): OwnCraft {
  return new OwnCraft(catalogWith(...checks), text);
}

const slow = ruleOf({
  when: ['gyro.rate < 2 kHz'],
  at: 'gyro.rate',
  message: 'At {gyro.rate} half is {gyro.rate / 2 in Hz}; the kind is {gyro.filter.1.kind}.',
  advice: 'Set {gyro.rate} to {2 * 2 kHz in kHz}.',
  related: [{ at: 'gyro.filter.1.kind', message: 'It is {gyro.filter.1.kind} here.' }],
  fixes: [{ title: 'Set it to 4 kHz in place of {gyro.rate}', set: 'gyro.rate', to: '4 kHz' }],
});

describe('a rule that is written as data', () => {
  it('stands at the value of its parameter, with the numbers in its sentences', () => {
    const [found, ...others] = craftWith(
      '[gyro]\nrate = 1 kHz\n[gyro.filter.1]\nkind = none\n',
      slow,
    ).findings();
    assert.deepEqual(others, []);
    assert.ok(found);
    assert.equal(messageOf(found), 'At 1 kHz half is 500 Hz; the kind is none.');
    assert.equal(adviceOf(found), 'Set 1 kHz to 4 kHz.');
    const { place, related, fixes } = found;
    assert.equal(place.line.text.slice(place.start, place.end), '1 kHz');
    assert.deepEqual(related.map(relatedText), ['It is none here.']);
    assert.deepEqual(
      fixes.map((fix) => [fixTitle(fix), fix.edits.map(({ newText }) => newText)]),
      [['Set it to 4 kHz in place of 1 kHz', ['4 kHz']]],
    );
  });

  it('says "not set" or "unknown" rather than nothing', () => {
    const rule = ruleOf({
      when: ['gyro.rate is set'],
      at: 'gyro.rate',
      message: '{control.rate} and {control.rate * 2 in Hz} and {figure.no-such}.',
    });
    const [found] = craftWith('[gyro]\nrate = 1 kHz', rule).findings();
    assert.equal(found && messageOf(found), 'not set and unknown and unknown.');
  });

  it('needs all of its conditions', () => {
    const rule = ruleOf({ when: ['gyro.rate < 2 kHz', 'gyro.filter.1.kind is none'], at: 'gyro.rate' });
    assert.equal(craftWith('[gyro]\nrate = 1 kHz\nfilter.1.kind = none', rule).findings().length, 1);
    assert.equal(craftWith('[gyro]\nrate = 1 kHz', rule).findings().length, 0);
    assert.equal(craftWith('[gyro]\nrate = 4 kHz\nfilter.1.kind = none', rule).findings().length, 0);
  });

  it('about what is missing waits for a whole craft', () => {
    const rule = ruleOf({ when: ['gyro.rate is missing'], at: 'gyro.rate', whole: true });
    assert.equal(craftWith('[esc]\n', rule).findings().length, 0);
    assert.equal(craftWith('[craft]\n', rule).findings().length, 1);
  });

  it('may go over all members of a collection, and names each', () => {
    const rule = ruleOf({
      each: 'switch',
      when: ['switch.<function>.channel > 8'],
      at: 'switch.<function>.channel',
      message: '{member} is on {switch.<function>.channel}.',
      fixes: [{ title: 'Move {member}', set: 'switch.<function>.channel', to: '5' }],
    });
    const text = '[switch.arm]\nchannel = 5\n[switch.locate]\nchannel = 9\n[switch.log]\nchannel = 10\n';
    const found = craftWith(text, rule).findings();
    assert.deepEqual(found.map(messageOf), ['locate is on 9.', 'log is on 10.']);
    assert.deepEqual(
      found.map(({ fixes: [fix] }) => (fix === undefined ? null : fixTitle(fix))),
      ['Move locate', 'Move log'],
    );
  });

  it('goes over members with any name (F04)', () => {
    const rule = ruleOf({
      each: 'pack',
      when: ['pack.<name>.cells > 4'],
      at: 'pack.<name>.cells',
      message: '{member}: {pack.<name>.cells}',
    });
    const text = '[pack.__proto__]\ncells = 5\n[pack.constructor]\ncells = 6\n[pack.a]\ncells = 3\n';
    assert.deepEqual(craftWith(text, rule).findings().map(messageOf), ['__proto__: 5', 'constructor: 6']);
  });

  it('that cannot be read is named as a fault and left out; the others run', () => {
    const craft = craftWith(
      '[gyro]\nrate = 1 kHz',
      ruleOf({ id: 'own/bad', when: ['gyro.rate ~ 5'], at: 'gyro.rate' }),
      slow,
    );
    assert.equal(craft.findings().length, 1);
    assert.deepEqual(craft.faults, ['own/bad']);
  });

  it('that fails while it runs takes no other with it', () => {
    const failing = ruleOf({
      id: 'own/bad',
      when: ['gyro.rate is set'],
      at: 'gyro.rate',
      message: '{gyro.rate in parsec}',
    });
    const craft = craftWith('[gyro]\nrate = 1 kHz', failing, slow);
    assert.deepEqual(
      craft.findings().map(({ check }) => check.id),
      ['own/rule'],
    );
    assert.deepEqual(craft.faults, ['own/bad']);
  });
});

describe('a rule that runs for each pack', () => {
  const rule = ruleOf({
    scope: 'pack',
    when: ['gyro.filter.1.cutoff < 100 Hz'],
    at: 'gyro.filter.1.cutoff',
    message: 'Only {gyro.filter.1.cutoff}.',
  });
  const packs = '[pack.sprint]\n[pack.cruise]\n';

  it('is told once when it holds with all of them', () => {
    const found = craftWith(`${packs}[gyro.filter.1]\ncutoff = 90 Hz\n`, rule).findings();
    assert.deepEqual(found.map(messageOf), ['Only 90 Hz.']);
    assert.equal(found[0]?.pack, null);
  });

  it('is told for the one pack that it holds with, at its own line', () => {
    const text = `${packs}[gyro.filter.1]\ncutoff = 120 Hz\n[gyro.filter.1 @ cruise]\ncutoff = 90 Hz\n`;
    const found = craftWith(text, rule).findings();
    assert.deepEqual(found.map(messageOf), ['With pack cruise: Only 90 Hz.']);
    assert.deepEqual([found[0]?.pack, found[0]?.place.script.lineNumber(found[0].place.line)], ['cruise', 5]);
  });

  it('is told for each where the numbers differ', () => {
    const text = `${packs}[gyro.filter.1]\ncutoff = 80 Hz\n[gyro.filter.1 @ cruise]\ncutoff = 90 Hz\n`;
    assert.deepEqual(craftWith(text, rule).findings().map(messageOf), [
      'With pack sprint: Only 80 Hz.',
      'With pack cruise: Only 90 Hz.',
    ]);
  });

  it('runs once where there is no pack, and names none where there is one', () => {
    assert.deepEqual(craftWith('[gyro.filter.1]\ncutoff = 90 Hz', rule).findings().map(messageOf), [
      'Only 90 Hz.',
    ]);
    const one = craftWith('[pack.sprint]\n[gyro.filter.1]\ncutoff = 90 Hz', rule).findings();
    assert.equal(one.length, 1);
  });
});

describe('where a rule stands', () => {
  const missing = ruleOf({ when: ['gyro.filter.1.kind is missing'], at: 'gyro.filter.1.kind' });
  const marked = (text: string, check = missing) => {
    const [found] = craftWith(text, check).findings();
    return (
      found && [
        found.place.script.lineNumber(found.place.line),
        found.place.line.text.slice(found.place.start, found.place.end),
      ]
    );
  };

  it('is the header of its section where no line sets it', () => {
    assert.deepEqual(marked('[craft]\n[gyro]\n[gyro.filter.1]\n'), [2, 'gyro.filter.1']);
  });

  it('is the next header above, then that of the craft, then the first line', () => {
    assert.deepEqual(marked('[craft]\n[gyro]\n'), [1, 'gyro']);
    assert.deepEqual(marked('\n[craft]\n'), [1, 'craft']);
    assert.deepEqual(marked('  # mine  \n'), [0, '# mine']);
    assert.deepEqual(marked(''), [0, '']);
  });

  it('is no section for one pack', () => {
    assert.deepEqual(marked('[craft]\n[pack.a]\n[gyro.filter.1 @ a]\n'), [0, 'craft']);
  });

  it('is the include where another script sets it, with the line itself related', () => {
    const rule = ruleOf({ when: ['gyro.rate < 2 kHz'], at: 'gyro.rate' });
    const craft = new OwnCraft(catalogWith(rule), '# me\ninclude "a.craft"\n', {
      'a.craft': 'include "b.craft"\n',
      'b.craft': '[gyro]\nrate = 1 kHz\n',
    });
    const [found] = craft.findings();
    assert.ok(found);
    assert.equal(found.place.script, craft.craft.root);
    assert.equal(found.place.line.text.slice(found.place.start, found.place.end), '"a.craft"');
    assert.deepEqual(
      found.related.map((one) => [
        one.place.script.uri,
        one.place.script.lineNumber(one.place.line),
        relatedText(one),
      ]),
      [['test:///work/b.craft', 1, 'Set here: gyro.rate.']],
    );
  });

  it('is the name where the value cannot be understood', () => {
    const rule = ruleOf({ when: ['gyro.rate is set'], at: 'gyro.rate' });
    assert.deepEqual(marked('[gyro]\nrate = 1,2,3\n', rule), [1, 'rate']);
  });

  it('is where the line stands now, however it moved', () => {
    const rule = ruleOf({ when: ['gyro.rate < 2 kHz'], at: 'gyro.rate' });
    const craft = craftWith('[gyro]\nrate = 1 kHz\n', rule);
    craft.findings();
    const start = { line: 0, character: 0 };
    craft.craft.changed(craft.craft.root.edit([{ start, end: start, text: '# one\n# two\n' }]));
    const [found] = craft.findings();
    assert.equal(found?.place.script.lineNumber(found.place.line), 3);
  });
});

describe('what a fix puts in', () => {
  const rule = ruleOf({
    when: ['gyro.filter.1.kind is missing'],
    at: 'gyro.filter.1.kind',
    fixes: [{ title: 'Turn it off', set: 'gyro.filter.1.kind', to: 'none' }],
  });

  function mended(text: string): string {
    const craft = craftWith(text, rule);
    return withFix(craft);
  }

  function withFix(craft: OwnCraft): string {
    const [edit] = craft.findings()[0]?.fixes[0]?.edits ?? [];
    assert.ok(edit);
    const { script, line, start, end } = edit.place;
    const number = script.lineNumber(line);
    const at = (character: number) => ({ line: number, character });
    return script.document.edit({ start: at(start), end: at(end), text: edit.newText }).document.text();
  }

  it('goes after the last setting of its section', () => {
    assert.equal(
      mended('[gyro.filter.1]\ncutoff = 90 Hz # low\n# tail\n\n[esc]\n'),
      '[gyro.filter.1]\ncutoff = 90 Hz # low\nkind = none\n# tail\n\n[esc]\n',
    );
    assert.equal(mended('[gyro.filter.1] # why'), '[gyro.filter.1] # why\nkind = none');
  });

  it('goes into a wider section under the rest of its name', () => {
    assert.equal(mended('[gyro]\nrate = 8 kHz\n'), '[gyro]\nrate = 8 kHz\nfilter.1.kind = none\n');
  });

  it('goes into a section of its own at the end', () => {
    assert.equal(mended('[craft]'), '[craft]\n\n[gyro.filter.1]\nkind = none\n');
    assert.equal(mended('[craft]\n'), '[craft]\n[gyro.filter.1]\nkind = none\n');
    assert.equal(mended(''), '[gyro.filter.1]\nkind = none\n');
  });

  it('has the line ends of the script (A05)', () => {
    assert.equal(
      mended('[craft]\r\nmass = 1 kg'),
      '[craft]\r\nmass = 1 kg\r\n\r\n[gyro.filter.1]\r\nkind = none\r\n',
    );
    assert.equal(mended('[gyro]\rrate = 8 kHz\r'), '[gyro]\rrate = 8 kHz\rfilter.1.kind = none\r');
  });

  it('goes to the right place after edits of lines that the rule never read', () => {
    const craft = craftWith('[gyro.filter.1]\ncutoff = 90 Hz\n[esc]\n', rule);
    withFix(craft);
    const { root } = craft.craft;
    const edit = { start: { line: 1, character: 9 }, end: { line: 1, character: 11 }, text: '80' };
    craft.craft.changed(root.edit([edit]));
    assert.equal(withFix(craft), '[gyro.filter.1]\ncutoff = 80 Hz\nkind = none\n[esc]\n');
  });

  it('leaves a value alone that cannot be understood', () => {
    const set = ruleOf({
      when: ['gyro.rate is set'],
      at: 'gyro.rate',
      fixes: [{ title: 'Set it', set: 'gyro.rate', to: '1 kHz' }],
    });
    assert.deepEqual(craftWith('[gyro]\nrate = 1,2,3\n', set).findings()[0]?.fixes, []);
  });

  it('overrides in this script what an included one sets', () => {
    const set = ruleOf({
      when: ['gyro.rate < 2 kHz'],
      at: 'gyro.rate',
      fixes: [{ title: 'Set it', set: 'gyro.rate', to: '4 kHz' }],
    });
    const craft = new OwnCraft(catalogWith(set), 'include "a.craft"\n', {
      'a.craft': '[gyro]\nrate = 1 kHz\n',
    });
    assert.equal(withFix(craft), 'include "a.craft"\n[gyro]\nrate = 4 kHz\n');
  });
});

describe('rules after an edit', () => {
  const rule = ruleOf({ when: ['gyro.rate < 2 kHz'], at: 'gyro.rate' });
  const text = '[gyro]\nrate = 1 kHz\n[craft]\nmass = 212 g\n';

  /** Whether the rule says the same object as before an edit of a line. */
  function isKept(line: number): boolean {
    const own = craftOn();
    const [before] = own.findings();
    const at = { line, character: 7 };
    own.craft.changed(own.craft.root.edit([{ start: at, end: at, text: '5' }]));
    return before !== undefined && own.findings().includes(before);
  }

  function craftOn() {
    const own = craftWith(text, rule);
    own.findings();
    return own;
  }

  it('run again when something that they read has changed', () => {
    assert.equal(isKept(1), false);
  });

  it('do not run again when something else has', () => {
    assert.equal(isKept(3), true);
  });

  it('tell the same as before when nothing has', () => {
    const own = craftOn();
    assert.deepEqual(own.findings().map(findingAsData), own.findings().map(findingAsData));
  });
});
