import type { BenchStep } from '../../catalog/model/bench-card';
import { replacementText } from '../../catalog/replacements';
import type { Finding } from '../../checks/report/finding';
import { listed } from '../../checks/report/listed';
import { asScript } from '../../checks/report/render';
import type { Craft } from '../../craft/craft';
import { fileName } from '../../craft/include-path';
import { notLookedAt } from '../../craft/read-as';
import { CraftView } from '../../craft/view';
import { jobStages } from '../job-stages';
import type { BenchCard, CardPart } from './card';
import { cardSteps } from './steps';

const parts: readonly (readonly [stage: BenchStep['stage'], title: string])[] = [
  ...jobStages,
  ['hover', 'With propellers, outdoors'],
];

const cautions: readonly string[] = [
  'Propellers off for every step with a pack connected, up to the last part.',
  'Lithium packs can burn: never unattended, never below the cell limit.',
  'Transmit power and channels: local radio rules and your licence decide.',
  'Flight: local aviation and club rules decide; a pilot in goggles often needs an observer.',
  'Figures are estimates from the script. This card tests a build; it does not clear it for flight.',
];

const note =
  '“On the board” means wherever your board shows its readings: its set-up view, the overlay, or the transmitter’s screen. Steps are common practice where they name no source.';

/** The card of a craft with these packs, all on one: only the steps that it needs. */
export function benchCard(
  craft: Craft,
  findings: readonly Finding[],
  packs: readonly string[] = craft.packs(),
  renderer = asScript,
): BenchCard {
  const view = new CraftView(craft, packs[0] ?? null);
  const steps = cardSteps(craft, packs);
  const open = findings.filter(({ level, accepted }) => level === 'must-fix' && accepted === null);
  return {
    name: view.text('craft.name') ?? onOneLine(fileName(craft.root.uri)),
    about: [
      view.board === undefined ? undefined : view.boardTitle,
      packs.length === 0 ? undefined : `${packs.length === 1 ? 'pack' : 'packs'} ${listed(packs)}`,
    ].flatMap((word) => word ?? []),
    packs,
    cautions,
    note,
    unchecked: notLookedAt(craft.readAs()),
    first: open.map((finding) => ({ message: renderer.message(finding), advice: renderer.advice(finding) })),
    accepted: findings.flatMap((finding) =>
      finding.accepted === null ? [] : [{ message: renderer.message(finding), reason: finding.accepted }],
    ),
    replaced: craft.catalog.replacements.map(replacementText),
    parts: parts.flatMap(([stage, title]) => {
      const own = steps.filter((step) => step.stage === stage).map(({ step }) => step);
      return own.length === 0 ? [] : [{ stage, title, steps: own, ...signOff(stage) }];
    }),
  };
}

/** The bench is done on an evening and the flight on a morning, perhaps by two: each part is signed by itself. */
function signOff(stage: BenchStep['stage']): Pick<CardPart, 'signed' | 'noticed'> {
  const room = (id: string, words: string, isWords: boolean) => ({
    id: `${stage} ${id}`,
    words,
    unit: '',
    isWords,
    setting: null,
    script: null,
  });
  return {
    signed: [room('done-by', 'Done by', false), room('done-on', 'Date', false)],
    noticed: room('noticed', 'What was noticed', true),
  };
}

/** A file may be named with line ends, which would begin a line of the card. */
function onOneLine(name: string): string {
  return name.replace(/[\r\n\u2028\u2029]/g, '\ufffd');
}
