import assert from 'node:assert/strict';
import { hover } from '../../../../server/src/features/hover/hover';
import { plainText } from '../../../../server/src/features/markdown';
import { snapshotOf } from '../../../support/snapshot';

interface HoverInTest {
  /** The text that the hover is about. */
  readonly about: string;
  readonly text: string;
}

/** The hover at the `|` in a text, as a client without markup shows it; null where there is none. */
function hoverAt(marked: string, files: Readonly<Record<string, string>> = {}): HoverInTest | null {
  const { snapshot, position } = snapshotOf(marked, files);
  const found = hover(snapshot, position);
  if (found === null) return null;
  const { start, end } = found.range;
  const line = snapshot.script.document.lineAt(start.line)?.text ?? '';
  return { about: line.slice(start.character, end.character), text: plainText(found.markdown) };
}

const packs = '[pack.sprint]\ncells = 6\n[pack.cruise]\ncells = 4\n';

describe('hovering over a setting', () => {
  it('tells of figures that hang on it and are not known what would make them known', () => {
    const motor = '[craft]\nlayout = quad-x\n[motor]\nk|v = 1300 rpm/V\n';
    const pack = '[pack.one]\nchemistry = lipo\ncells = 4\n';
    const told = hoverAt(motor + pack)?.text ?? '';
    assert.match(told, /^- Hover, thrust, .*: not known yet\. Write motor\.stator-diameter, .*prop\.pitch/m);
    const unset = hoverAt(`${motor.replace('|', '')}idle-cur|rent = \n${pack}`)?.text ?? '';
    assert.match(unset, /not known yet\. Fill in motor\.idle-current\./);
    assert.doesNotMatch(hoverAt('[motor]\nk|v = 1300 rpm/V\n[gyro]\n')?.text ?? '', /not known/);
  });

  it('tells what it holds, what it does, what it takes, what it risks and how to prove it', () => {
    const found = hoverAt('[gyro.filter.1]\ncut|off = 120 Hz\n');
    assert.equal(found?.about, 'cutoff');
    for (const part of [
      /^Cutoff of a gyro filter · gyro\.filter\.1\.cutoff/,
      /120 Hz/,
      /Takes 5 Hz to 4 kHz, usually/,
      /Higher:/,
      /Lower:/,
      /Risk:/,
      /Prove it:/,
      /Stage: tune/,
    ])
      assert.match(found?.text ?? '', part);
  });

  it('tells what a calculation comes to, for every pack where they differ', () => {
    const text = `let quiet = 90 Hz\n${packs}[gyro.filter.1]\ncut|off = 2 * quiet\n[gyro.filter.1 @ cruise]\ncutoff = 130 Hz\n`;
    assert.match(hoverAt(text)?.text ?? '', /With sprint: 180 Hz[\s\S]*With cruise: 130 Hz/);
  });

  it('tells where a value comes from that an included script sets', () => {
    const files = { 'club.craft': '[arming]\ntilt-limit = 60 deg\n' };
    const found = hoverAt('include "club.craft"\n[arming]\ntilt-|limit = 40 deg\n', files);
    assert.match(found?.text ?? '', /in place of 60 deg in club\.craft/);
  });

  it('tells what a word does, with its source where it stands in a table', () => {
    assert.match(hoverAt('signal-loss.action = dr|op\n')?.text ?? '', /motors/i);
    assert.match(hoverAt('receiver.link = cr|sf\n')?.text ?? '', /420000 baud|420 000|serial/i);
  });

  it('tells the situation, the function or the element whose setting it is', () => {
    const turn = hoverAt('[control.when.fast-turn]\ninte|gral = 0 %\n')?.text ?? '';
    assert.match(turn, /In a fast turn: The sticks ask for/);
    assert.match(turn, /At 0 % the integral rests/);
    const beginning = hoverAt('[control.when.fast-turn]\nfr|om = 200 deg/s\n')?.text ?? '';
    assert.match(beginning, /In a fast turn: [\s\S]*about any axis/);
    assert.match(hoverAt('switch.arm.chan|nel = 5\n')?.text ?? '', /Arm: /);
    assert.doesNotMatch(hoverAt('pack.sprint.cel|ls = 4\n')?.text ?? '', /sprint:/);
  });

  it('names many choices by the question that each answers, never as one list', () => {
    const text = hoverAt('switch.mark.joined-with = lo|g\n')?.text ?? '';
    assert.match(text, /What starts and stops the motors\?: arm, permission, stop-motors\n/);
    assert.match(text, /How is it flown along\?: self-level, /);
    assert.doesNotMatch(text, /stop-motors, self-level/);
    assert.match(hoverAt('[swi|tch]\n')?.text ?? '', /noted\?: lights, overlay-hide, log, mark/);
  });

  it('says of a value that could not be read that it is unknown', () => {
    assert.match(hoverAt('[gyro]\nra|te = 3 ms\n')?.text ?? '', /could not be understood/);
  });
});

describe('hovering over other things', () => {
  it('tells what a section is about', () => {
    const found = hoverAt('[gy|ro]\n');
    assert.equal(found?.about, 'gyro');
    assert.match(found?.text ?? '', /gyro/i);
  });

  it('tells what a constant holds', () => {
    assert.match(hoverAt('let qui|et = 3 * 30 Hz\n')?.text ?? '', /90 Hz/);
  });

  it('tells of a pack in an overlay what the pack is', () => {
    assert.match(hoverAt(`${packs}[gyro.filter.1 @ crui|se]\ncutoff = 130 Hz\n`)?.text ?? '', /cruise/);
  });

  it('tells of an acceptance what is accepted', () => {
    const found = hoverAt(
      'arming.tilt-limit = 180 deg # accept safe/arms-at-|any-tilt: a bench craft that is strapped down\n',
    );
    assert.match(found?.about ?? '', /^# accept safe\/arms-at-any-tilt:/);
    assert.match(found?.text ?? '', /Accepted: a bench craft that is strapped down/);
  });

  it('says nothing on blanks, in comments and on names that nobody knows', () => {
    for (const marked of ['|\n', '# no|thing\n', '[gyro]\nwob|ble = 1\n', '[gyro]   |\n'])
      assert.equal(hoverAt(marked), null, marked);
  });
});

describe('text from a script in a hover (G06)', () => {
  it('is shown as typed and never as markup', () => {
    const { snapshot, position } = snapshotOf('craft.na|me = "[run](command:quit) <img src=x> `a`"\n');
    const { markdown = '' } = hover(snapshot, position) ?? {};
    const outsideCode = markdown.replace(/(`+)(?!`).*?(?<!`)\1(?!`)/g, '');
    assert.doesNotMatch(outsideCode, /(?<!\\)\]\(|<[a-z]/);
    assert.match(plainText(markdown), /\[run\]\(command:quit\) <img src=x> `a`/);
  });
});
