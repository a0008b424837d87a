import type { Finding } from '../../checks/report/finding';
import type { Craft } from '../../craft/craft';
import { CraftView } from '../../craft/view';
import { findingChanges } from '../compare/finding-changes';
import { movedFigures } from '../compare/moved-figures';
import {
  type ProposalId,
  type ProposalReading,
  type ProposedSetting,
  type ProposedValues,
  proposalTitles,
} from './answer';
import { askFigures } from './ask-figures';
import { editsBetween } from './edits';
import type { MovableLine } from './movable';
import type { Setup } from './search';
import type { Tuning } from './tuning';
import { setupLines, type Work } from './work';

interface Making {
  readonly craft: Craft;
  readonly work: Work;
  readonly id: ProposalId;
  readonly setup: Setup;
  readonly findings: readonly Finding[];
  readonly check: (craft: Craft) => readonly Finding[];
}

/** A setup as it would be written, with all that it does to the whole craft. */
export function* proposalOf({
  craft,
  work,
  id,
  setup,
  findings,
  check,
}: Making): Generator<void, ProposedValues> {
  const lines = [...work.voltages, ...setupLines(work.tuning.movables, setup)];
  const settings = settingsOf(craft, lines);
  const trial = work.trial.with(lines);
  yield* askFigures(trial);
  const packs = craft.packsOrNone();
  return {
    id,
    title: proposalTitles[id],
    point: work.pointOf(setup),
    settings,
    readings: setupReadings(work.tuning, setup),
    moved: movedFigures(
      craft,
      trial,
      packs.map((pack) => [pack, pack]),
    ),
    ...findingChanges(findings, check(trial)),
    edits: editsBetween(craft.root.document, trial.root.document),
    text: trial.root.document.text(),
  };
}

function settingsOf(craft: Craft, lines: readonly MovableLine[]): readonly ProposedSetting[] {
  return lines.flatMap(({ path, to, pack, isForPack }) => {
    const view = new CraftView(craft, pack);
    const before = view.isSet(path) ? view.written(path) : null;
    if (before === to) return [];
    const line = craft.setting(path, pack)?.origin.line;
    const readers = craft.packs().filter((one) => craft.setting(path, one)?.origin.line === line);
    const isOwn = isForPack || (line !== undefined && readers.length < craft.packs().length);
    return [{ path, packs: isOwn ? (isForPack ? [pack ?? ''] : readers) : [], before, after: to }];
  });
}

/** What a setup comes to with each pack, with its least margins. */
export function setupReadings(tuning: Tuning, setup: Setup): readonly ProposalReading[] {
  const least = tuning.loops.leastMargins(setup);
  return tuning.readings(setup).map((reading) => ({
    ...reading,
    phaseMargin: least.get(reading.pack)?.phase ?? null,
    gainMargin: least.get(reading.pack)?.gain ?? null,
  }));
}
