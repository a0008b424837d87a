import { benchCardFile } from './bench-card';
import { boardProfile } from './board-profile';
import { checkFile } from './check';
import { collectionFile } from './collection';
import { hardwareFiles, measuredPropeller } from './hardware';
import { parameterFile } from './parameter';
import * as z from './plain-zod';
import { tradeWordsFile } from './trade-words';

/** Everything in `schemas/`, as it stands in the compiled bundle. */
export const bundle = z.strictObject({
  parameters: z.array(parameterFile),
  checks: z.array(checkFile),
  boards: z.array(boardProfile),
  ...collectionFile.shape,
  ...hardwareFiles.links.shape,
  ...hardwareFiles.signals.shape,
  ...hardwareFiles.chemistries.shape,
  ...hardwareFiles.gauges.shape,
  ...hardwareFiles.grids.shape,
  ...hardwareFiles.videoBands.shape,
  ...hardwareFiles.regions.shape,
  propellers: z.array(measuredPropeller),
  ...benchCardFile.shape,
  tradeWords: tradeWordsFile,
});

export type Bundle = z.infer<typeof bundle>;
