import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type * as z from 'zod/mini';
import { loadCatalog } from '../src/catalog/catalog';
import { numberFaults } from '../src/catalog/faults/numbers';
import { benchCardFile } from '../src/catalog/model/bench-card';
import { boardProfile } from '../src/catalog/model/board-profile';
import type { Bundle } from '../src/catalog/model/bundle';
import { checkFile } from '../src/catalog/model/check';
import { collectionFile } from '../src/catalog/model/collection';
import { commonValueFile } from '../src/catalog/model/common-values';
import { hardwareFiles } from '../src/catalog/model/hardware';
import { jobFile } from '../src/catalog/model/job';
import { type MotorFile, type MotorLaws, motorFile } from '../src/catalog/model/motors';
import { packFile } from '../src/catalog/model/packs';
import { synonymFile, writtenParameterFile } from '../src/catalog/model/parameter';
import { type RecordingColumns, recordingColumnsFile } from '../src/catalog/model/recording-columns';
import { sizeFile } from '../src/catalog/model/sizes';
import { type TradeWords, tradeWordsFile } from '../src/catalog/model/trade-words';
import { checkProblems } from './catalog-checks/checks';
import { commonValueProblems } from './catalog-checks/common-values';
import { hardwareProblems, motorProblems } from './catalog-checks/hardware';
import { jobProblems } from './catalog-checks/job';
import { nameProblems } from './catalog-checks/names';
import { asLines, placedParameters } from './catalog-checks/places';
import { proseProblems } from './catalog-checks/prose';
import { recordingProblems } from './catalog-checks/recordings';
import { relationProblems } from './catalog-checks/relations';
import { tradeWordProblems } from './catalog-checks/trade-words';
import { unitSpellingProblems } from './catalog-checks/units';
import { motorLawsOf } from './motor-laws';
import { readData } from './read-data';
import { synonymProblems, withSynonyms } from './synonyms';

/** The data of `schemas/` in one piece, and what is wrong with it, a line a problem. */
export interface Compiled {
  readonly bundle: Bundle;
  /** Empty when every file is as it must be. Each says the file, the place in it and what was expected. */
  readonly problems: readonly string[];
}

/**
 * Reads and checks every data file below `<root>/schemas`. A file that does not fit its model is left out
 * of the bundle and reported; what the files say together is checked once all of them fit.
 */
export function compileCatalog(root: string): Compiled {
  const problems: string[] = [];
  const one = <T>(file: string, model: z.ZodMiniType<T>): T | undefined =>
    readData(root, file, model, problems);
  const folder = <T>(name: string, model: z.ZodMiniType<T>): T[] =>
    filesIn(root, name).flatMap((file) => one(file, model) ?? []);

  const written = folder('schemas/parameters', writtenParameterFile);
  const synonyms = one('schemas/synonyms.json', synonymFile)?.synonyms ?? {};
  const motors = one('schemas/motors.json', motorFile);
  const bundle: Bundle = {
    parameters: [...withSynonyms(written, synonyms)],
    checks: folder('schemas/checks', checkFile),
    boards: folder('schemas/boards', boardProfile),
    collections: one('schemas/collections.json', collectionFile)?.collections ?? [],
    common: one('schemas/common-values.json', commonValueFile)?.common ?? [],
    ...(one('schemas/job.json', jobFile) ?? { order: [], parts: [] }),
    sizes: one('schemas/sizes.json', sizeFile)?.sizes ?? [],
    links: one('schemas/links.json', hardwareFiles.links)?.links ?? [],
    signals: one('schemas/signals.json', hardwareFiles.signals)?.signals ?? [],
    chemistries: one('schemas/chemistries.json', hardwareFiles.chemistries)?.chemistries ?? [],
    gauges: one('schemas/gauges.json', hardwareFiles.gauges)?.gauges ?? [],
    grids: one('schemas/grids.json', hardwareFiles.grids)?.grids ?? [],
    bands: one('schemas/video-bands.json', hardwareFiles.videoBands)?.bands ?? [],
    regions: one('schemas/regions.json', hardwareFiles.regions)?.regions ?? [],
    propellers: one('schemas/propellers.json', hardwareFiles.propellers)?.propellers ?? [],
    motorLaws: motors === undefined ? null : lawsOf(motors, problems),
    packs: one('schemas/packs.json', packFile) ?? null,
    steps: one('schemas/bench-card.json', benchCardFile)?.steps ?? [],
    tradeWords: one('schemas/trade-words.json', tradeWordsFile) ?? noTradeWords,
    recordings: one('schemas/recordings.json', recordingColumnsFile) ?? noRecordings,
  };
  // Without a file that does not fit, much else names what is not there: that would hide what is really wrong.
  if (problems.length > 0) return { bundle, problems };
  return { bundle, problems: [...synonymProblems(written, synonyms), ...togetherProblems(bundle)] };
}

const noTradeWords: TradeWords = { concepts: [], opposites: [], numbers: {}, empty: {}, said: {} };

const noRecordings: RecordingColumns = {
  kinds: [],
  axes: { roll: [], pitch: [], yaw: [] },
  units: [],
  fulls: [],
  findings: [],
};

function lawsOf(motors: MotorFile, problems: string[]): MotorLaws | null {
  const faults = motorProblems(motors);
  const laws = faults.length > 0 ? null : motorLawsOf(motors);
  problems.push(...faults);
  if (faults.length === 0 && laws === null)
    problems.push(
      'schemas/motors.json: motors of two makers or more are needed, of several sizes and windings',
    );
  return laws;
}

function togetherProblems(bundle: Bundle): readonly string[] {
  const numbers = [
    ...hardwareProblems(bundle),
    ...placedParameters(bundle).flatMap(({ at, parameter }) => asLines(at, numberFaults(parameter))),
  ];
  const words = [
    ...nameProblems(bundle),
    ...relationProblems(bundle),
    ...proseProblems(bundle),
    ...unitSpellingProblems(bundle),
    ...tradeWordProblems(bundle),
    ...recordingProblems(bundle),
  ];
  // A catalogue can only be built, and rules be looked up in it, when every number can be read.
  if (numbers.length > 0) return [...numbers, ...words];
  const catalog = loadCatalog(bundle);
  return [
    ...words,
    ...checkProblems(bundle, catalog),
    ...commonValueProblems(bundle, catalog),
    ...jobProblems(bundle, catalog),
  ];
}

function filesIn(root: string, folder: string): readonly string[] {
  const path = join(root, folder);
  if (!existsSync(path)) return [];
  const names = readdirSync(path).filter((name) => name.endsWith('.json'));
  return names.sort().map((name) => `${folder}/${name}`);
}
