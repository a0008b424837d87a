import { benchCardFile } from './bench-card';
import { boardProfile } from './board-profile';
import { checkFile } from './check';
import { collectionFile } from './collection';
import { commonValueFile } from './common-values';
import { hardwareFiles, measuredPropeller } from './hardware';
import { jobFile } from './job';
import { motorLaws } from './motors';
import { packFile } from './packs';
import { parameterFile } from './parameter';
import * as z from './plain-zod';
import { recordingColumnsFile } from './recording-columns';
import { sizeFile } from './sizes';
import { tradeWordsFile } from './trade-words';

/** Everything in `schemas/`, as it stands in the compiled bundle. */
export const bundle = z.strictObject({
  parameters: z.array(parameterFile),
  checks: z.array(checkFile),
  boards: z.array(boardProfile),
  ...collectionFile.shape,
  ...commonValueFile.shape,
  ...jobFile.shape,
  sizes: sizeFile.shape.sizes,
  ...hardwareFiles.links.shape,
  ...hardwareFiles.signals.shape,
  ...hardwareFiles.chemistries.shape,
  ...hardwareFiles.gauges.shape,
  ...hardwareFiles.grids.shape,
  ...hardwareFiles.videoBands.shape,
  ...hardwareFiles.regions.shape,
  propellers: z.array(measuredPropeller),
  /** Null where the listed motors make none: that is a problem of the data. */
  motorLaws: z.nullable(motorLaws),
  /** Null where the file is not as it must be. */
  packs: z.nullable(packFile),
  ...benchCardFile.shape,
  tradeWords: tradeWordsFile,
  recordings: recordingColumnsFile,
});

export type Bundle = z.infer<typeof bundle>;
