import type { FoundValues, ProposalReading, ProposedSetting, ProposedValues } from '../../sheet/find/answer';
import { heldText, readingClauses } from '../../sheet/find/hold-text';
import { measuredSentence, trembleText } from '../../sheet/find/measured-text';
import { shortNumber } from '../../units/number-text';
import { painted, type Terminal } from '../terminal';
import { findingLines, movedText } from './compare-text';
import { visible } from './visible';
import { wrapped } from './wrapped';

/** What was found, for people: the answer, the trade-off as a table, and each proposal. */
export function foundText(
  found: FoundValues,
  terminal: Terminal,
  { isWhole }: { readonly isWhole: boolean },
): string {
  const title = (text: string) => ['', painted(text, 'bold', terminal)];
  const { wish, now, unfiltered, proposals } = found;
  const packs = wish.packs.filter((pack) => pack !== null);
  const lines = [
    found.answer,
    visible(`Asked for${packs.length === 0 ? '' : ` with ${packs.join(', ')}`}: ${heldText(wish.holds)}.`),
    ...(unfiltered === null ? [] : [unfiltered.text]),
    ...(found.tones === null ? [] : [visible(found.tones)]),
    ...(found.measured === null ? [] : [visible(found.measured)]),
    ...(found.inTheWay.length === 0 ? [] : title('What stands in the way')),
    ...found.inTheWay.map((text) => `  ${visible(text)}`),
    ...(proposals.length === 0 || now === null
      ? []
      : [
          ...title(`Between delay and noise (% of throttle for ${trembleText(found.nowReadings)})`),
          ...tradeLines(found),
        ]),
    ...proposals.flatMap((one) => [
      ...title(`${one.title} (${one.id})`),
      ...proposalLines(one, found.nowReadings, terminal, isWhole),
    ]),
    ...(found.heldBack.length === 0 ? [] : title('Not moved further')),
    ...found.heldBack.map((text) => `  ${visible(text)}`),
    '',
    found.caution,
    ...(proposals.length === 0 ? [] : ['To take one: --write <its name>. Every figure that moves: --all.']),
  ];
  return `${lines.map((line) => broken(line, terminal.width)).join('\n')}\n`;
}

function broken(line: string, width: number | null): string {
  const [lead = ''] = /^ */.exec(line) ?? [];
  return wrapped(line.slice(lead.length), width, { lead, indent: `${lead}  ` });
}

/** The drawing of the trade-off as a table. */
function tradeLines({ now, unfiltered, front, proposals }: FoundValues): readonly string[] {
  const named = new Map(proposals.map(({ point, title }) => [point.delay, title]));
  const rows = [
    ...(unfiltered === null ? [] : [{ ...unfiltered.point, what: 'without any filter' }]),
    ...(now === null ? [] : [{ ...now, what: 'now' }]),
    ...front.map((point) => ({ ...point, what: named.get(point.delay) ?? '' })),
  ];
  return rows.map(({ delay, noise, what }) =>
    `  ${`${shortNumber(delay)} ms`.padStart(9)}  ${`${shortNumber(noise)} %`.padStart(10)}  ${what}`.trimEnd(),
  );
}

function proposalLines(
  proposal: ProposedValues,
  now: readonly ProposalReading[],
  terminal: Terminal,
  isWhole: boolean,
): readonly string[] {
  const { settings, readings, moved } = proposal;
  const shown = isWhole ? moved : moved.filter(({ turn }) => turn === 'worse').slice(0, 3);
  return [
    ...(settings.length === 0
      ? ['  Nothing changes: the script stands so already.']
      : settings.map(settingLine)),
    ...readings.flatMap((one) => [readingLine(one), ...measuredLine(now, one)]),
    ...findingLines(proposal, '  ', terminal),
    ...shown.map((one) => `  ${movedText(one)}`),
    ...(shown.length < moved.length ? [`  and ${moved.length - shown.length} more figures move`] : []),
  ];
}

function settingLine({ path, packs, before, after }: ProposedSetting): string {
  const where = packs.length === 0 ? '' : ` @ ${packs.join(', ')}`;
  return visible(`  ${path}${where}: ${before ?? 'not set'} → ${after}`);
}

function measuredLine(now: readonly ProposalReading[], then: ProposalReading): readonly string[] {
  const sentence = measuredSentence(
    now.find(({ pack }) => pack === then.pack),
    then,
  );
  return sentence === null ? [] : [`    ${sentence}`];
}

function readingLine(reading: ProposalReading): string {
  const clauses = readingClauses(reading, (title) => `the loudest tone (${title})`);
  return visible(`  ${reading.pack === null ? '' : `with pack ${reading.pack}: `}${clauses.join(', ')}`);
}
