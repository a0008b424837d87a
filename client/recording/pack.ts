import type {
  Hovered,
  LinkKept,
  MeasuredAnswer,
  MeasuredSpan,
  PackGave,
  RecordingReport,
} from '../../server/src/lsp/recording-protocol';
import { element } from '../page/element';
import { question, restsOn, withheld } from './answer';
import { measuredWords } from './measured';
import { likelyText } from './measured-text';

/** What does the pack give? */
export function packSection({ pack }: RecordingReport): HTMLElement {
  return question('pack', pack, packShort, (told) => [
    figures([
      ['Open voltage', told.openVoltage],
      ['Resistance at once, pack and leads', told.resistanceAtOneSecond],
      ['Resistance after ten seconds', told.resistanceAtTenSeconds],
      ['Charge used', told.usedCharge],
      ['Lowest voltage', told.lowestVoltage],
    ]),
  ]);
}

/** What does hovering take? */
export function hoverSection({ hover }: RecordingReport): HTMLElement {
  return question('hover', hover, hoverShort, (told) => [
    figures([
      ['Throttle in the hover', told.throttle],
      ['Current in the hover', told.current],
      ['Thrust beside what the script lets expect', told.thrustScale],
    ]),
  ]);
}

/** Does the link hold? */
export function linkSection({ link }: RecordingReport): HTMLElement {
  return question('link', link, linkShort, (told) => [
    figures([
      ['Time between control frames', told.interval],
      ['Longest gap', told.longestGap],
      ['Frames that came', told.whole],
    ]),
  ]);
}

function packShort({ resistanceAtTenSeconds: { told }, lowestVoltage }: PackGave): string {
  if (told !== null) return likelyText(told);
  return lowestVoltage === null ? '' : `down to ${likelyText(lowestVoltage)}`;
}

function hoverShort({ throttle }: Hovered): string {
  return `at ${likelyText(throttle)}`;
}

function linkShort({ longestGap }: LinkKept): string {
  return `longest gap ${likelyText(longestGap)}`;
}

type MeasuredRow = readonly [name: string, value: MeasuredAnswer<MeasuredSpan> | MeasuredSpan | null];

/** Names with their figures; one that is withheld keeps its row and says why. */
function figures(rows: readonly MeasuredRow[]): HTMLElement {
  return element(
    'dl',
    { class: 'figures' },
    ...rows.flatMap(([name, value]) => {
      const inside = value === null ? null : figure(value);
      return inside === null ? [] : [element('dt', {}, name), element('dd', {}, ...inside)];
    }),
  );
}

function figure(value: MeasuredAnswer<MeasuredSpan> | MeasuredSpan): readonly HTMLElement[] {
  if ('likely' in value) return [measuredWords(value)];
  return value.told === null
    ? [withheld(value.reason, value.advice)]
    : [measuredWords(value.told), restsOn(value.basis)];
}
