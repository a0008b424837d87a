import * as z from 'zod';
import { addition, boardFile } from '../src/catalog/model/addition';

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
