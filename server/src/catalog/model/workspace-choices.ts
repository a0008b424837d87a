import { level } from './check';
import * as z from './plain-zod';

const paths = z._default(z.array(z.string().check(z.minLength(1))), []);

/** What a workspace chooses about checking: the file `propsoff.json` in its folder. */
export const workspaceChoices = z.strictObject({
  $schema: z.optional(z.string()),
  check: paths.check(
    z.describe(
      'What the command line checks where no path is named: files, folders and patterns such as "race/**/*.craft". Without any, the whole folder.',
    ),
  ),
  leaveOut: paths.check(
    z.describe(
      'Patterns of files that are left out of a folder, such as "old/**". A file that is named is checked.',
    ),
  ),
  levels: z
    ._default(z.record(z.string(), z.union([level, z.literal('off')])), {})
    .check(
      z.describe(
        'Checks by their ids, each with its level here: "tune/no-notch": "off". A note may be switched off or raised, a risk raised; a must-fix stays what it is.',
      ),
    ),
  failOn: z.optional(
    level.check(z.describe('The lowest level for which propsoff check fails; without it must-fix.')),
  ),
});

export type WorkspaceChoices = z.infer<typeof workspaceChoices>;
/** The level of a check in a workspace. */
export type ChosenLevel = WorkspaceChoices['levels'][string];
