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
  const schema = z.toJSONSchema(addition, { io: 'input', target: 'draft-7', reused: 'ref' });
  const told = {
    title: 'What a workspace adds to Propsoff',
    description:
      'Settings, words, rules, links, chemistries and regions of your own. Put the file into the folder "propsoff" of the workspace.',
  };
  return `${JSON.stringify({ ...schema, ...told }, null, 2)}\n`;
}

/** The same for a board profile. */
export function boardSchema(): string {
  const schema = z.toJSONSchema(boardFile, { io: 'input', target: 'draft-7', reused: 'ref' });
  const told = {
    title: 'A board profile for Propsoff',
    description:
      'What one board has and how it writes its settings. Put the file into the folder "boards" of the workspace.',
  };
  return `${JSON.stringify({ ...schema, ...told }, null, 2)}\n`;
}

/** The same for what a workspace chooses about checking. */
export function choicesSchema(): string {
  const schema = z.toJSONSchema(workspaceChoices, { io: 'input', target: 'draft-7', reused: 'ref' });
  const told = {
    title: 'What Propsoff checks here',
    description:
      'Which files are checked, which notes are switched off or ranked higher, and from which level on a check fails. Put the file into the folder of the workspace, as propsoff.json.',
  };
  return `${JSON.stringify({ ...schema, ...told }, null, 2)}\n`;
}

/** The same for what is kept beside a board's text. */
export function keptSchema(): string {
  const schema = z.toJSONSchema(keptBeside, { io: 'input', target: 'draft-7', reused: 'ref' });
  const told = {
    title: "What is kept beside a board's text",
    description: 'Which board the text is of, and which of its risks are accepted, with a reason each.',
  };
  return `${JSON.stringify({ ...schema, ...told }, null, 2)}\n`;
}

/** The same for what the columns of a logger hold. */
export function layoutSchema(): string {
  const schema = z.toJSONSchema(recordingLayout, { io: 'input', target: 'draft-7', reused: 'ref' });
  const told = {
    title: 'What the columns of a logger hold',
    description:
      'Which column of a recording is what, and how its numbers count. Files with the same headings are read by it. Put the file into the folder "recordings" of the workspace.',
  };
  return `${JSON.stringify({ ...schema, ...told }, null, 2)}\n`;
}
