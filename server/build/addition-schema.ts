import * as z from 'zod';
import { addition, boardFile } from '../src/catalog/model/addition';
import { keptBeside } from '../src/catalog/model/kept-beside';
import { recordingLayout } from '../src/catalog/model/recording-layout';
import { workspaceChoices } from '../src/catalog/model/workspace-choices';

/**
 * The JSON Schema of a file that adds to the catalogue, for editors: made from the model that such a file is
 * held to, so that both ask for the same. Draft 7 is what editors know best.
 */
export function additionSchema(): string {
  return schemaText(addition, {
    title: 'What a workspace adds to Propsoff',
    description:
      'Settings, words, rules, links, chemistries and regions of your own. Put the file into the folder "propsoff" of the workspace.',
  });
}

/** The same for a board profile. */
export function boardSchema(): string {
  return schemaText(boardFile, {
    title: 'A board profile for Propsoff',
    description:
      'What one board has and how it writes its settings. Put the file into the folder "boards" of the workspace.',
  });
}

/** The same for what a workspace chooses about checking. */
export function choicesSchema(): string {
  return schemaText(workspaceChoices, {
    title: 'What Propsoff checks here',
    description:
      'Which files are checked, which notes are switched off or ranked higher, and from which level on a check fails. Put the file into the folder of the workspace, as propsoff.json.',
  });
}

/** The same for what is kept beside a board's text. */
export function keptSchema(): string {
  return schemaText(keptBeside, {
    title: "What is kept beside a board's text",
    description: 'Which board the text is of, and which of its risks are accepted, with a reason each.',
  });
}

/** The same for what the columns of a logger hold. */
export function layoutSchema(): string {
  return schemaText(recordingLayout, {
    title: 'What the columns of a logger hold',
    description:
      'Which column of a recording is what, and how its numbers count. Files with the same headings are read by it. Put the file into the folder "recordings" of the workspace.',
  });
}

function schemaText(
  model: z.core.$ZodType,
  told: { readonly title: string; readonly description: string },
): string {
  const schema = z.toJSONSchema(model, { io: 'input', target: 'draft-7', reused: 'ref' });
  return `${JSON.stringify({ ...schema, ...told }, null, 2)}\n`;
}
